// The time line under the picture: bend and butt angle of the cast in view, and its moments as marks. A mark is dragged, or
// moved with the arrow keys; the picture goes with it, so that it is put on a frame and not on a time.
const NS = 'http://www.w3.org/2000/svg';
const HEIGHT = 190, TOP = 64, FOOT = 176, SIDE = 14, LABEL = 24;
const clamp = (v, a, b) => Math.max(a, Math.min(b, v));

function el(name, attributes, into, text) {
  const e = document.createElementNS(NS, name);
  for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
  if (text) e.textContent = text;
  into.append(e);
  return e;
}

/**
 * @param svg where it is drawn
 * @param hooks show(frame), put(id, frame) that promises whether it was kept, picked(id), mayMove
 */
export function timeline(svg, hooks) {
  let data = null, cast = null, n = 0, width = 600, held = null, moved = null, picked = null;

  const range = () => cast ? [cast.from, cast.from + cast.bend.length - 1] : [0, data.times.length - 1];
  const X = f => { const [a, b] = range(); return SIDE + (width - 2 * SIDE) * (f - a) / Math.max(1, b - a); };
  const F = x => { const [a, b] = range(); return a + (x - SIDE) / (width - 2 * SIDE) * (b - a); };
  const away = c => Math.max(0, c.first - n, n - c.last);
  const nearest = () => data.casts.reduce((best, c) => !best || away(c) < away(best) ? c : best, null);
  const frameOf = e => moved && moved.id === e.id ? moved.frame : e.frame;

  /** Labels stand as near over their moments as their width allows. */
  function places() {
    const list = cast.events.map(e => ({ e, at: X(frameOf(e)) })).sort((a, b) => a.at - b.at || a.e.number - b.e.number);
    const gap = Math.min(LABEL, (width - 2 * SIDE) / Math.max(1, list.length));
    list.forEach((l, i) => { l.x = Math.max(l.at, i ? list[i - 1].x + gap : SIDE); });
    for (let i = list.length - 1, most = width - SIDE; i >= 0; i--, most -= gap) {
      list[i].x = Math.min(list[i].x, most);
      most = list[i].x;
    }
    return list;
  }

  function curves() {
    const most = Math.max(10, ...cast.bend.filter(v => v !== null));
    [['bend', 0, most], ['butt', -40, 200]].forEach(([key, low, high]) => {
      let d = '', on = false;
      cast[key].forEach((v, i) => {
        if (v === null) { on = false; return; }
        const y = FOOT - (FOOT - TOP) * clamp((v - low) / (high - low), 0, 1);
        d += (on ? 'L' : 'M') + X(cast.from + i).toFixed(1) + ' ' + y.toFixed(1);
        on = true;
      });
      if (d) el('path', { d, class: key }, svg);
    });
  }

  function marks() {
    for (const { e, at, x } of places()) {
      const frame = frameOf(e), on = e.id === picked;
      const g = el('g', {
        class: 'mark' + (on ? ' picked' : '') + (moved && moved.id === e.id ? ' moved' : ''), 'data-id': e.id, role: 'slider',
        tabindex: on || (!picked && e === cast.events[0]) ? 0 : -1, 'aria-label': e.number + ' ' + e.name,
        'aria-valuemin': range()[0], 'aria-valuemax': range()[1], 'aria-valuenow': frame,
        'aria-valuetext': 'frame ' + frame + ', ' + data.times[frame].toFixed(3) + ' s'
      }, svg);
      if (!hooks.mayMove) g.setAttribute('aria-readonly', 'true');
      el('polyline', { points: `${x},${LABEL + 4} ${at},${TOP - 8} ${at},${FOOT}`, class: 'when' }, g);
      el('rect', { x: x - LABEL / 2 + 1, y: 2, width: LABEL - 2, height: LABEL + 2 }, g);
      el('text', { x, y: 20, 'text-anchor': 'middle' }, g, String(e.number));
    }
  }

  function draw() {
    if (!data) return;
    const focused = svg.contains(document.activeElement) ? document.activeElement.dataset.id : null;
    width = Math.max(260, svg.clientWidth);
    svg.setAttribute('viewBox', `0 0 ${width} ${HEIGHT}`);
    cast = nearest();
    svg.replaceChildren();
    if (cast) { curves(); marks(); }
    el('line', { id: 'now', class: 'now', y1: TOP - 10, y2: HEIGHT - 4 }, svg);
    now();
    if (focused) svg.querySelector(`[data-id="${focused}"]`)?.focus();
  }

  function now() {
    const line = svg.querySelector('#now');
    if (!line) return;
    const x = clamp(X(n), 2, width - 2);
    line.setAttribute('x1', x);
    line.setAttribute('x2', x);
  }

  function move(frame) {
    const [a, b] = range();
    moved.frame = clamp(Math.round(frame), a, b);
    draw();
    hooks.show(moved.frame);
  }

  function leave() {
    held = null;
    moved = null;
    draw();
  }

  function keep() {
    const { id, frame, from } = moved;
    if (frame === from) leave();
    else hooks.put(id, frame).then(kept => { if (!kept) leave(); });
  }

  const event = id => cast && cast.events.find(e => e.id === id);

  function pick(id) {
    picked = id;
    hooks.picked(id);
    draw();
  }

  const at = e => (e.clientX - svg.getBoundingClientRect().left) * width / svg.getBoundingClientRect().width;

  svg.addEventListener('pointerdown', e => {
    if (!data || held) return;
    const g = e.target.closest('.mark');
    svg.setPointerCapture(e.pointerId);
    held = { pointer: e.pointerId, x: at(e), id: g ? g.dataset.id : null, far: false };
    if (!g) { hooks.show(F(held.x)); return; }
    const frame = event(held.id).frame;
    moved = hooks.mayMove ? { id: held.id, frame, from: frame } : null;
    pick(held.id);
    hooks.show(frame);
  });
  svg.addEventListener('pointermove', e => {
    if (!held || held.pointer !== e.pointerId) return;
    if (!held.id) hooks.show(F(at(e)));
    else if (moved && (held.far || Math.abs(at(e) - held.x) > 3)) {
      held.far = true;
      move(moved.from + F(at(e)) - F(held.x));
    }
  });
  svg.addEventListener('pointerup', e => {
    if (!held || held.pointer !== e.pointerId) return;
    if (held.far) { held = null; keep(); } else leave();
  });
  svg.addEventListener('pointercancel', leave);

  svg.addEventListener('keydown', e => {
    const id = e.target.dataset ? e.target.dataset.id : null;
    if (!id || !event(id)) return;
    const step = { ArrowRight: 1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[e.key];
    const list = cast.events, i = list.findIndex(x => x.id === id);
    if (step && hooks.mayMove) {
      if (!moved || moved.id !== id) { const f = event(id).frame; moved = { id, frame: f, from: f }; pick(id); }
      move(moved.frame + step * (e.shiftKey ? 10 : 1));
    } else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      const next = list[clamp(i + (e.key === 'ArrowUp' ? -1 : 1), 0, list.length - 1)];
      moved = null;
      pick(next.id);
      hooks.show(next.frame);
      svg.querySelector(`[data-id="${next.id}"]`).focus();
    } else if (e.key === 'Enter' && moved) keep();
    else if (e.key === 'Escape') { const f = event(id).frame; leave(); hooks.show(f); }
    else return;
    e.preventDefault();
  });
  new ResizeObserver(() => { if (Math.abs(svg.clientWidth - width) > 1) draw(); }).observe(svg);

  return {
    load(given) { data = given; moved = null; draw(); },
    at(frame) {
      n = frame;
      if (data && nearest() !== cast) draw(); else now();
    },
    pick
  };
}
