/** The map: Leaflet over our own canvas in the job's plane (1 unit is 1 m). */
(function (R) {
  'use strict';

  var PADDING = 0.15;
  /** Places with a label at all, and those that have one when the whole field is on the screen. */
  var MAX_LABELS = 200;
  var FIRST_LABELS = 10;

  /** A layer that paints the job into one canvas. */
  var FieldLayer = L.Layer.extend({
    initialize: function (paint) {
      this._paint = paint;
    },
    onAdd: function (map) {
      this._map = map;
      this._canvas = L.DomUtil.create('canvas', 'field leaflet-zoom-animated');
      this.getPane().appendChild(this._canvas);
      this.redraw();
    },
    onRemove: function () {
      this._canvas.remove();
    },
    getEvents: function () {
      return {moveend: this.redraw, zoomanim: this._animate, resize: this.redraw};
    },
    _animate: function (event) {
      var scale = this._map.getZoomScale(event.zoom);
      var offset = this._map._latLngBoundsToNewLayerBounds(this._bounds, event.zoom, event.center).min;
      L.DomUtil.setTransform(this._canvas, offset, scale);
    },
    redraw: function () {
      var map = this._map;
      var size = map.getSize();
      if (!size.x || !size.y) {
        return; // hidden, as while the page is printed
      }
      var dense = Math.min(window.devicePixelRatio || 1, 2);
      var topLeft = map.containerPointToLayerPoint(size.multiplyBy(-PADDING)).round();
      var width = Math.round(size.x * (1 + 2 * PADDING));
      var height = Math.round(size.y * (1 + 2 * PADDING));
      var corner = map.layerPointToLatLng(topLeft);
      this._bounds = L.latLngBounds(corner, map.layerPointToLatLng(topLeft.add([width, height])));
      var scale = map.getZoomScale(map.getZoom(), 0) * dense;
      this._canvas.width = width * dense;
      this._canvas.height = height * dense;
      this._canvas.style.width = width + 'px';
      this._canvas.style.height = height + 'px';
      L.DomUtil.setTransform(this._canvas, topLeft, 1);
      this._paint(this._canvas, {
        scale: scale,
        x: function (east) { return (east - corner.lng) * scale; },
        y: function (north) { return (corner.lat - north) * scale; }
      });
    }
  });

  function latLngs(rings) {
    return rings.map(function (ring) {
      return ring.map(function (at) { return [at[1], at[0]]; });
    });
  }

  /**
   * @param {HTMLElement} element
   * @param {Object} app see review.js
   */
  R.FieldMap = function (element, app) {
    var self = this;
    var job = app.job;
    var t = app.t;
    this.job = job;
    this.state = app;
    this.frames = [];
    this.map = L.map(element, {
      crs: L.CRS.Simple, zoomSnap: 0.25, zoomDelta: 0.5, minZoom: -4, maxZoom: 6, attributionControl: false,
      zoomControl: false, preferCanvas: false
    });
    L.control.zoom({zoomInTitle: t('page.map.in'), zoomOutTitle: t('page.map.out')}).addTo(this.map);
    this.home = bounds(job);
    this.reset();
    this.field = new FieldLayer(function (canvas, view) { self.paint(canvas, view); });
    this.overlays = this.layers();
    this.overlays.strips = this.field;
    element.classList.toggle('over-picture', !!job.data.backdrop);
    Object.keys(this.overlays).forEach(function (key) {
      if (app.layers[key]) {
        self.overlays[key].addTo(self.map);
      }
    });
    var near = function () { element.classList.toggle('near', self.map.getZoom() > self.homeZoom + 1); };
    this.homeZoom = this.map.getZoom();
    this.map.on('zoomend', near);
    this.pin = L.circleMarker([0, 0], {radius: 7, className: 'pin', interactive: false});
    this.map.on('click', function (event) { app.tap(event.latlng.lng, event.latlng.lat); });
    element.addEventListener('keydown', function (event) {
      if (event.key === 'Enter' && event.target === element) {
        var center = self.map.getCenter();
        app.tap(center.lng, center.lat);
      }
    });
  };

  function bounds(job) {
    var low = [Infinity, Infinity];
    var high = [-Infinity, -Infinity];
    for (var k = 0; k < job.steps; k++) {
      if (job.pass[k] > 0) {
        low = [Math.min(low[0], job.north[k]), Math.min(low[1], job.east[k])];
        high = [Math.max(high[0], job.north[k]), Math.max(high[1], job.east[k])];
      }
    }
    var around = function (rings) {
      rings.forEach(function (ring) {
        ring.forEach(function (at) {
          low = [Math.min(low[0], at[1]), Math.min(low[1], at[0])];
          high = [Math.max(high[0], at[1]), Math.max(high[1], at[0])];
        });
      });
    };
    around(job.data.boundary || []);
    job.data.areas.forEach(function (area) { around(area.rings); });
    return isFinite(low[0]) ? L.latLngBounds(low, high) : L.latLngBounds([-1, -1], [1, 1]);
  }

  /** The picture under the map. */
  function backdrop(data) {
    var b = data.backdrop;
    return b ? L.imageOverlay(document.getElementById('job-backdrop').textContent.trim(), [[b[1], b[0]], [b[3], b[2]]],
      {pane: 'tilePane', className: 'backdrop'}) : L.layerGroup();
  }

  R.FieldMap.prototype.layers = function () {
    var data = this.job.data;
    var self = this;
    var places = function (list, name) {
      return L.layerGroup(list.map(function (place) {
        return L.polygon(latLngs(place.rings), {className: name, interactive: false, smoothFactor: 0.5});
      }).concat(list.slice(0, MAX_LABELS).map(function (place, i) {
        return L.marker([place.at[1], place.at[0]], {
          keyboard: false,
          interactive: false,
          icon: L.divIcon({
            className: 'label ' + name + (i < FIRST_LABELS ? '' : ' minor'), html: place.label, iconSize: null
          })
        });
      })));
    };
    return {
      backdrop: backdrop(data),
      skips: places(data.skips, 'skip'),
      doubtful: places(data.doubtful, 'doubtful'),
      overlaps: places(data.overlaps, 'overlap'),
      findings: L.layerGroup(data.findings.map(function (finding, i) {
        var at = self.plane(finding.latLon[0], finding.latLon[1]);
        return L.marker([at[1], at[0]], {
          keyboard: false,
          interactive: false,
          icon: L.divIcon({className: 'label finding', html: String(i + 1), iconSize: null})
        });
      })),
      boundary: L.polygon(latLngs(data.boundary || []), {className: 'boundary', interactive: false}),
      setbacks: L.polygon(latLngs(data.setbacks), {className: 'setback', interactive: false}),
      zones: L.polygon(latLngs(data.zones), {className: 'zone', interactive: false})
    };
  };

  /** East and north of a place in degrees, near the field. */
  R.FieldMap.prototype.plane = function (lat, lon) {
    var data = this.job.data;
    return [(lon - data.origin[1]) * data.metersPerDegree[1], (lat - data.origin[0]) * data.metersPerDegree[0]];
  };

  R.FieldMap.prototype.paint = function (canvas, view) {
    var begin = performance.now();
    var raster = new R.Raster(canvas.width, canvas.height);
    R.paintField(this.job, raster, view, this.state.mode, this.state.product, this.state.span);
    canvas.getContext('2d').putImageData(raster.image, 0, 0);
    R.paintAreas(this.job, canvas.getContext('2d'), view, this.state.mode, this.state.product);
    this.frames.push(performance.now() - begin);
  };

  /** Shows or hides a layer. */
  R.FieldMap.prototype.toggle = function (key, shown) {
    if (shown) {
      this.overlays[key].addTo(this.map);
    } else {
      this.overlays[key].remove();
    }
  };

  R.FieldMap.prototype.redraw = function () {
    if (this.state.layers.strips) {
      this.field.redraw();
    }
  };

  /** Puts the mark on a place. */
  R.FieldMap.prototype.mark = function (east, north) {
    this.pin.setLatLng([north, east]).addTo(this.map);
    if (!this.map.getBounds().contains([north, east])) {
      this.map.panTo([north, east]);
    }
  };

  /** Zooms to the outlines of places. */
  R.FieldMap.prototype.zoomTo = function (places) {
    var all = L.latLngBounds([]);
    places.forEach(function (place) { all.extend(L.polygon(latLngs(place.rings)).getBounds()); });
    this.map.fitBounds(all.pad(0.25), {maxZoom: 4});
  };

  /** What part of the field is seen. */
  R.FieldMap.prototype.view = function () {
    return {center: this.map.getCenter(), zoom: this.map.getZoom()};
  };

  R.FieldMap.prototype.show = function (view) {
    this.map.setView(view.center, view.zoom, {animate: false});
  };

  R.FieldMap.prototype.goTo = function (east, north) {
    this.map.setView([north, east], Math.max(1, this.map.getZoom()));
  };

  R.FieldMap.prototype.remove = function () {
    this.map.remove();
  };

  R.FieldMap.prototype.reset = function () {
    // Room for the labels of places at the edge.
    this.map.fitBounds(this.home, {padding: [20, 16]});
  };

  /** In place of a map where nobody knows where the strips lie. */
  R.NO_MAP = {
    mark: function () {}, redraw: function () {}, reset: function () {}, remove: function () {}, show: function () {},
    view: function () { return null; }
  };
})(Rowledger);
