// A line or an angle that somebody draws on the frame: by dragging, by tapping its points, or with arrow keys and Enter.
// An angle is drawn from one end to its corner and on to the other end.
const FAR = 3;

/** @param hooks says(words), changed(), done(points), start() the place to begin at by keyboard */
export function sketch(hooks) {
  let need = 0, points = [], cursor = null, dragging = false;
  const far = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]) > FAR;

  function finish() {
    if (points.length < need) { tell(); hooks.changed(); return; }
    const drawn = points;
    stop();
    hooks.done(drawn);
  }

  function tell() {
    const what = need === 2 ? ['one end', 'the other end'] : ['one end', 'the corner', 'the other end'];
    hooks.says('Drag it, or set ' + what[points.length] + ': by keyboard with the arrows and Enter. Escape leaves it.');
  }

  function stop() {
    need = 0;
    points = [];
    cursor = null;
    dragging = false;
    hooks.changed();
  }

  return {
    begin(wanted) { points = []; need = wanted; cursor = hooks.start(); tell(); hooks.changed(); },
    stop,
    wanted: () => need,
    cursor: () => need && !dragging ? cursor : null,
    points: () => need && cursor && points.length && !dragging ? [...points, cursor] : points,
    down(p) {
      if (!points.length) points.push(p);
      points.push(p);
      dragging = true;
      hooks.changed();
    },
    move(p) {
      if (!dragging) return;
      points[points.length - 1] = p;
      hooks.changed();
    },
    up() {
      if (!dragging) return;
      dragging = false;
      if (!far(points[points.length - 1], points[points.length - 2])) points.pop();
      cursor = points[points.length - 1];
      finish();
    },
    arrow(dx, dy, width, height) {
      cursor = [Math.max(0, Math.min(width, cursor[0] + dx)), Math.max(0, Math.min(height, cursor[1] + dy))];
      hooks.changed();
    },
    enter() {
      if (points.length && !far(points[points.length - 1], cursor)) return;
      points.push(cursor);
      finish();
    }
  };
}

/** Degrees at the middle of three points; null for a line. */
export function degrees(p) {
  if (p.length !== 3) return null;
  const a = [p[0][0] - p[1][0], p[0][1] - p[1][1]], b = [p[2][0] - p[1][0], p[2][1] - p[1][1]];
  return Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])) * 180 / Math.PI;
}
