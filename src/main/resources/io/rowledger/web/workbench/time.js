/** Time and place: where the logs ran, and the zone proposed from there, confirmed by the person's own memory of the day. */
(function (R) {
  'use strict';

  R.screens.time = function (main, field) {
    R.withRig(field, function (rig) {
      var state = rig.state;
      if (!rig.get('job.zone') && state.zone) {
        rig.propose('job.zone', state.zone);
      }
      var box = R.h('select', {id: 'zone', onchange: function () {
        rig.set('job.zone', box.value);
        if (rig.get('log.zone') && rig.get('log.zone') !== 'UTC') {
          rig.set('log.zone', box.value);
        }
        said();
      }});
      box.appendChild(new Option(R.t('workbench.time.choose'), ''));
      R.zones.forEach(function (zone) { box.appendChild(new Option(zone.replace(/_/g, ' '), zone)); });
      box.value = rig.get('job.zone');
      var when = R.h('p.big', {'aria-live': 'polite'});
      var clock = R.h('div');
      // Times without a zone were read in that of the rig file, in UTC where it has none.
      var read = state.zoneless ? 'UTC' : rig.get('log.zone');
      var said = function () {
        var chosen = rig.get('log.zone');
        R.fill(when, state.startS === null ? R.t('workbench.time.untimed')
          : !read || read === 'UTC' && (!chosen || chosen === 'UTC') ? span(state, rig.get('job.zone'))
            : span(state, read) + (chosen === 'UTC' ? ' UTC' : ''));
        R.fill(clock, read && state.startS !== null ? clocks(rig, state, read, said) : null);
      };
      said();
      var place = R.h('div.view');
      R.fill(main, R.title(field, 'workbench.step.time'), R.h('div.split2', null, R.h('div', null, when,
        R.h('p', null, R.t('workbench.time.note')),
        R.h('p', null, R.h('label', {'for': 'zone'}, R.t('workbench.time.zone')), ' ', box),
        proposal(state), clock,
        rig.next(state.wants ? 'bar' : 'run')), place));
      where(field, place);
      main.setAttribute('data-loaded', 'time');
    });
  };

  /** Day and hours of the log in a zone. */
  function span(state, zone) {
    var units = R.reader(zone);
    return R.t('workbench.time.when', units.day(state.startS), units.clock(state.startS), units.clock(state.endS));
  }

  /**
   * What the log's clock ran on, where its times don't say: each choice with the hours of work that it comes to.
   * @param {string} read zone in which the times were read
   */
  function clocks(rig, state, read, changed) {
    var chosen = rig.get('log.zone');
    var choice = function (zone, text, on) {
      return R.h('button.choice', {type: 'button', role: 'radio', 'aria-checked': String(on), onclick: function () {
        rig.set('log.zone', zone);
        changed();
      }}, text);
    };
    return R.h('fieldset' + (chosen ? '' : '.warn'), {id: 'clock'}, R.h('legend', null, R.t('workbench.time.zoneless')),
      R.h('div.choices', {role: 'radiogroup', 'aria-label': R.t('workbench.time.zoneless')},
        choice(rig.get('job.zone') || 'UTC', R.t('workbench.time.local', span(state, read)), !!chosen && chosen !== 'UTC'),
        read === 'UTC' ? choice('UTC', R.t('workbench.time.utc', span(state, rig.get('job.zone'))), chosen === 'UTC')
          : choice('UTC', R.t('workbench.time.utcOnly'), chosen === 'UTC')));
  }

  /** Which zone the position proposes, by the name that people call it. */
  function proposal(state) {
    if (!state.zone) {
      return R.h('p.note', null, R.t('workbench.time.noProposal'));
    }
    return R.h('p.note', {id: 'proposal'}, R.t('workbench.time.proposal', state.zone.replace(/_/g, ' '), called(state)));
  }

  function called(state) {
    try {
      var parts = new Intl.DateTimeFormat(document.documentElement.lang, {timeZone: state.zone, timeZoneName: 'long'})
        .formatToParts(new Date((state.startS || 0) * 1000));
      return parts.filter(function (part) { return part.type === 'timeZoneName'; })[0].value;
    } catch (e) {
      // A zone that this browser doesn't know.
      return state.zone;
    }
  }

  /** The passes with the boundary, north up, and where on earth that is. */
  function where(field, host) {
    R.call('GET', R.fieldPath(field, 'maps')).then(function (maps) {
      var at = maps.originDeg;
      R.fill(host, R.mapPicture(maps, null), at.length
        ? R.h('p.note', {id: 'place'}, R.t('workbench.time.place', degrees(at[0], at[0] < 0 ? R.t('workbench.time.south') : R.t('workbench.time.north')),
          degrees(at[1], at[1] < 0 ? R.t('workbench.time.west') : R.t('workbench.time.east')))) : null);
    }, R.problem);
  }

  function degrees(value, side) {
    return Math.abs(value).toFixed(4) + '° ' + side;
  }
})(Rowledger);
