/** Time zone: proposed from the position, confirmed by the person's own memory of the day. */
(function (R) {
  'use strict';

  R.screens.time = function (main, field) {
    R.withRig(field, function (rig) {
      var state = rig.state;
      if (!rig.get('job.zone') && state.zone) {
        rig.set('job.zone', state.zone);
      }
      var box = R.h('select', {id: 'zone', onchange: function () {
        rig.set('job.zone', box.value);
        said();
      }});
      box.appendChild(new Option(R.t('workbench.time.choose'), ''));
      R.zones.forEach(function (zone) { box.appendChild(new Option(zone.replace(/_/g, ' '), zone)); });
      box.value = rig.get('job.zone');
      var when = R.h('p.big', {'aria-live': 'polite'});
      var said = function () {
        var units = R.reader(rig.get('job.zone'));
        R.fill(when, state.startS === null ? R.t('workbench.time.untimed')
          : R.t('workbench.time.when', units.day(state.startS), units.clock(state.startS), units.clock(state.endS)));
      };
      said();
      R.fill(main, R.title(field, 'workbench.step.time'), when,
        R.h('p', null, R.t('workbench.time.note')),
        R.h('label', {'for': 'zone'}, R.t('workbench.time.zone')), ' ', box,
        rig.next(state.wants ? 'bar' : 'run'));
      main.setAttribute('data-loaded', 'time');
    });
  };
})(Rowledger);
