'use strict';
const $ = id => document.getElementById(id);
const proof = document.querySelector('meta[name=page]').content;
const clip = $('review').dataset.clip;
const home = '/clips/' + clip;
const stage = $('stage'), lens = $('lens'), img = $('frame'), over = $('over'), at = $('at'), says = $('says');
const NS = 'http://www.w3.org/2000/svg';
let data = null, n = 0, playing = 0, zoom = 1, panX = 0, panY = 0, moving = null, drawing = null, shownLine = [];

const clamp = (v, a, b) => Math.max(a, Math.min(b, v));
const part = () => document.querySelector('input[name=part]:checked').value;
function el(name, attributes, into, text) {
  const e = document.createElementNS(NS, name);
  for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
  if (text) e.textContent = text;
  into.append(e);
  return e;
}

async function post(to, fields) {
  const r = await fetch(to, { method: 'POST', headers: { 'X-Bendline-Page': proof }, body: new URLSearchParams(fields) });
  if (!r.ok) { says.textContent = await r.text(); return false; }
  await talk();
  return true;
}

async function talk() {
  const r = await fetch(home + '/talk');
  if (r.ok) $('talk').innerHTML = await r.text();
}

async function load() {
  const r = await fetch(home + '/followed.json', { cache: 'no-store' });
  if (!r.ok) return;
  data = await r.json();
  at.max = data.times.length - 1;
  over.setAttribute('viewBox', '0 0 ' + data.width + ' ' + data.height);
  moments();
  curves();
  show(n);
}

function show(frame, focusing) {
  if (!data) return;
  n = clamp(Math.round(frame), 0, data.times.length - 1);
  img.src = home + '/frames/' + n + '.jpg';
  img.alt = 'Frame ' + n + ' at ' + data.times[n].toFixed(3) + ' seconds';
  new Image().src = home + '/frames/' + Math.min(n + 1, data.times.length - 1) + '.jpg';
  at.value = n;
  at.setAttribute('aria-valuetext', img.alt);
  if (!playing) says.textContent = 'Frame ' + n + ' of ' + (data.times.length - 1) + ', ' + data.times[n].toFixed(3) + ' s';
  $('noteSeconds').value = data.times[n];
  overlay();
  now();
}

function line(points, cls, width) {
  el('polyline', { points: points.join(' '), class: 'under', 'stroke-width': 2.2 * width }, over);
  el('polyline', { points: points.join(' '), class: cls, 'stroke-width': width }, over);
}

function overlay() {
  over.replaceChildren();
  const u = Math.max(data.width, data.height) / 400 / Math.sqrt(zoom), f = data.frames[n] || {};
  const path = [];
  for (let i = Math.max(0, n - 40); i <= n; i++) {
    const t = (data.frames[i] || {}).tip;
    if (t) path.push(t[0] + ',' + t[1]);
  }
  if (path.length > 1) el('polyline', { points: path.join(' '), class: 'o-path', 'stroke-width': 1.6 * u }, over);
  if (f.blank) {
    const p = [];
    for (let i = 0; i < f.blank.length; i += 2) p.push(f.blank[i] + ',' + f.blank[i + 1]);
    line(p, 'o-blank', 1.2 * u);
  }
  const place = { ...f };
  if (moving) place[moving.part] = moving.at;
  const r = 4.5 * u;
  const mark = (name, made) => {
    if (!place[name]) return;
    for (const cls of ['under', 'o-' + name]) made(place[name], cls, cls === 'under' ? 3 * u : 1.4 * u);
  };
  mark('tip', (p, c, w) => el('circle', { cx: p[0], cy: p[1], r, class: c, 'stroke-width': w }, over));
  mark('grip', (p, c, w) => el('rect', { x: p[0] - r, y: p[1] - r, width: 2 * r, height: 2 * r, class: c, 'stroke-width': w }, over));
  mark('rig', (p, c, w) => el('path', { d: `M${p[0]} ${p[1] - 1.3 * r}l${1.3 * r} ${1.3 * r}l${-1.3 * r} ${1.3 * r}l${-1.3 * r} ${-1.3 * r}z`, class: c, 'stroke-width': w }, over));
  const drawn = drawing && drawing.points.length > 1 ? drawing.points : shownLine;
  if (drawn.length > 1) line(drawn.map(p => p[0].toFixed(1) + ',' + p[1].toFixed(1)), 'o-line', 1.4 * u);
}

function moments() {
  const box = $('moments');
  box.replaceChildren();
  data.casts.forEach(c => c.events.forEach(e => {
    const b = document.createElement('button');
    b.type = 'button';
    b.textContent = (data.casts.length > 1 ? 'Cast ' + c.number + ': ' : '') + e.number + ' ' + e.name;
    b.addEventListener('click', () => show(e.frame));
    box.append(b);
  }));
}

const X = f => 10 + 580 * f / Math.max(1, data.times.length - 1);
function curves() {
  const svg = $('curves');
  svg.replaceChildren();
  data.casts.forEach(c => {
    const most = Math.max(10, ...c.bend.filter(v => v !== null));
    [['bend', 'bend', 0, most], ['butt', 'butt', -40, 200]].forEach(([key, cls, low, high]) => {
      let d = '', on = false;
      c[key].forEach((v, i) => {
        if (v === null) { on = false; return; }
        d += (on ? 'L' : 'M') + X(c.from + i).toFixed(1) + ' ' + (140 - 115 * clamp((v - low) / (high - low), 0, 1)).toFixed(1);
        on = true;
      });
      if (d) el('path', { d, class: cls }, svg);
    });
    let last = -99;
    c.events.forEach(e => {
      const x = X(e.frame);
      el('line', { x1: x, x2: x, y1: 20, y2: 142, class: 'when' }, svg);
      if (x - last > 14) { el('text', { x, y: 15, 'text-anchor': 'middle' }, svg, String(e.number)); last = x; }
    });
  });
  el('line', { id: 'now', class: 'now', y1: 18, y2: 148 }, svg);
  now();
}
function now() {
  const l = $('now');
  if (l) { l.setAttribute('x1', X(n)); l.setAttribute('x2', X(n)); }
}
$('curves').addEventListener('click', e => {
  const b = $('curves').getBoundingClientRect();
  show(((e.clientX - b.left) / b.width * 600 - 10) / 580 * (data.times.length - 1));
});

function play() {
  if (playing) { clearTimeout(playing); playing = 0; $('play').textContent = 'Play'; show(n); return; }
  $('play').textContent = 'Pause';
  const step = () => {
    if (n >= data.times.length - 1) { playing = 1; play(); return; }
    playing = setTimeout(step, 1000 * (data.times[n + 1] - data.times[n]) / Number($('speed').value));
    show(n + 1);
  };
  playing = setTimeout(step, 1);
}

function magnify(factor, cx, cy) {
  const b = stage.getBoundingClientRect();
  const x = cx === undefined ? b.width / 2 : cx - b.left, y = cy === undefined ? b.height / 2 : cy - b.top;
  const z = clamp(zoom * factor, 1, 12);
  panX = clamp(x - (x - panX) * z / zoom, b.width * (1 - z), 0);
  panY = clamp(y - (y - panY) * z / zoom, b.height * (1 - z), 0);
  zoom = z;
  lens.style.transform = `translate(${panX}px,${panY}px) scale(${zoom})`;
  overlay();
}

function point(e) {
  const b = lens.getBoundingClientRect();
  return [clamp((e.clientX - b.left) / b.width, 0, 1) * data.width, clamp((e.clientY - b.top) / b.height, 0, 1) * data.height];
}

async function keep(name, p) {
  moving = null;
  $('move').setAttribute('aria-pressed', 'false');
  if (await post(home + '/corrections', { seconds: data.times[n], part: name, x: p[0].toFixed(2), y: p[1].toFixed(2) })) {
    says.textContent = 'Following the rod from your mark …';
  }
}

// One finger or the mouse: on the chosen mark it drags the mark, else along it steps frames (or moves a magnified picture);
// two fingers magnify.
const fingers = new Map();
let held = null, spread = 0;
stage.addEventListener('pointerdown', e => {
  if (!data) return;
  stage.setPointerCapture(e.pointerId);
  fingers.set(e.pointerId, e);
  if (fingers.size === 2) { held = null; moving = null; return; }
  const p = point(e), f = (data.frames[n] || {})[part()];
  const reach = 24 * data.width / lens.getBoundingClientRect().width;
  if (drawing) { drawing.points = [p, p]; held = { kind: 'line' }; }
  else if (moving || (f && Math.hypot(f[0] - p[0], f[1] - p[1]) < reach)) { moving = { part: part(), at: p }; held = { kind: 'mark' }; }
  else held = { kind: zoom > 1 ? 'pan' : 'step', x: e.clientX, y: e.clientY, n, panX, panY };
  overlay();
});
stage.addEventListener('pointermove', e => {
  if (!fingers.has(e.pointerId)) return;
  fingers.set(e.pointerId, e);
  if (fingers.size === 2) {
    const [a, b] = [...fingers.values()];
    const d = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
    if (spread) magnify(d / spread, (a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2);
    spread = d;
  } else if (held && held.kind === 'line') { drawing.points[1] = point(e); overlay(); }
  else if (held && held.kind === 'mark') { moving.at = point(e); overlay(); }
  else if (held && held.kind === 'step') show(held.n + Math.trunc((e.clientX - held.x) / 12));
  else if (held && held.kind === 'pan') { panX = held.panX + e.clientX - held.x; panY = held.panY + e.clientY - held.y; magnify(1); }
});
function lift(e) {
  fingers.delete(e.pointerId);
  spread = 0;
  if (held && held.kind === 'mark' && moving) keep(moving.part, moving.at);
  if (held && held.kind === 'line') drawn();
  held = null;
}
stage.addEventListener('pointerup', lift);
stage.addEventListener('pointercancel', e => { moving = null; held = null; lift(e); overlay(); });
stage.addEventListener('wheel', e => {
  e.preventDefault();
  if (e.ctrlKey) magnify(e.deltaY < 0 ? 1.2 : 1 / 1.2, e.clientX, e.clientY);
  else show(n + Math.sign(e.deltaY));
}, { passive: false });

function drawn() {
  $('drawing').value = drawing.points.map(p => p[0].toFixed(1) + ',' + p[1].toFixed(1)).join(' ');
  shownLine = drawing.points;
  drawing = null;
  $('draw').setAttribute('aria-pressed', 'false');
  overlay();
}

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
stage.addEventListener('keydown', e => {
  if (!data) return;
  const a = ARROWS[e.key];
  if (moving && a) {
    const s = e.shiftKey ? 10 : 1;
    moving.at = [clamp(moving.at[0] + s * a[0], 0, data.width), clamp(moving.at[1] + s * a[1], 0, data.height)];
    overlay();
  } else if (moving && e.key === 'Enter') keep(moving.part, moving.at);
  else if (moving && e.key === 'Escape') { moving = null; $('move').setAttribute('aria-pressed', 'false'); overlay(); }
  else if (a) show(n + a[0] - 10 * a[1]);
  else if (e.key === ' ') play();
  else if (e.key === '+') magnify(1.3);
  else if (e.key === '-') magnify(1 / 1.3);
  else if (e.key === 'Home') show(0);
  else if (e.key === 'End') show(data.times.length - 1);
  else return;
  e.preventDefault();
});

at.addEventListener('input', () => show(Number(at.value)));
$('back').addEventListener('click', () => show(n - 1));
$('on').addEventListener('click', () => show(n + 1));
$('play').addEventListener('click', play);
$('closer').addEventListener('click', () => magnify(1.5));
$('wider').addEventListener('click', () => magnify(1 / 1.5));
$('move').addEventListener('click', () => {
  const f = (data.frames[n] || {})[part()];
  moving = { part: part(), at: f ? [f[0], f[1]] : [data.width / 2, data.height / 2] };
  $('move').setAttribute('aria-pressed', 'true');
  stage.focus();
  overlay();
});
$('hidden').addEventListener('click', () => post(home + '/corrections', { seconds: data.times[n], part: part(), hidden: true }));
$('undo').addEventListener('click', () => post(home + '/undo', {}));
$('draw').addEventListener('click', () => {
  drawing = drawing ? null : { points: [] };
  $('draw').setAttribute('aria-pressed', String(!!drawing));
});
document.addEventListener('submit', async e => {
  if (!e.target.classList.contains('note')) return;
  e.preventDefault();
  if (await post(e.target.action, new FormData(e.target)) && e.target.querySelector('#words')) {
    e.target.reset();
    $('drawing').value = '';
    shownLine = [];
    says.textContent = 'The note is kept.';
    overlay();
  }
});
$('talk').addEventListener('click', e => {
  const b = e.target.closest('.moment');
  if (!b || !data) return;
  const seconds = Number(b.dataset.seconds);
  const i = data.times.findIndex(t => t > seconds + 1e-6);
  const li = b.closest('li');
  shownLine = (li.dataset.drawing || '').split(' ').filter(Boolean).map(p => p.split(',').map(Number));
  show((i < 0 ? data.times.length : i) - 1);
  stage.scrollIntoView({ block: 'nearest' });
});

let version = -1;
new EventSource(home + '/live').addEventListener('standing', e => {
  const [state, v, , , words] = e.data.split('\t');
  if (version >= 0 && Number(v) !== version) load().then(() => { says.textContent = 'Followed anew.'; });
  version = Number(v);
  $('review').dataset.version = v;
  $('review').dataset.state = state;
  if (state === 'following' || state === 'working') says.textContent = words;
  if (state === 'failed' || (state === 'done' && words)) says.textContent = words;
});
load();
