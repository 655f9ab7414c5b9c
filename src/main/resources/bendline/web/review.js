import { timeline } from './timeline.js';
import { sketch, degrees } from './sketch.js';

const $ = id => document.getElementById(id);
const proof = document.querySelector('meta[name=page]').content;
const clip = $('review').dataset.clip;
const home = '/clips/' + clip;
const stage = $('stage'), lens = $('lens'), img = $('frame'), over = $('over'), at = $('at'), says = $('says');
const NS = 'http://www.w3.org/2000/svg';
let data = null, n = 0, playing = 0, zoom = 1, panX = 0, panY = 0, moving = null, shown = [];
const mayMove = $('review').dataset.may === 'true';

const clamp = (v, a, b) => Math.max(a, Math.min(b, v));
const part = () => document.querySelector('input[name=part]:checked')?.value;
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
  stage.style.setProperty('--ratio', data.width / data.height);
  moments();
  line.load(data);
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
  if (!playing) says.textContent = 'Frame ' + n + ' of ' + (data.times.length - 1) + ', ' + data.times[n].toFixed(3) + ' s' + read();
  $('noteSeconds').value = data.times[n];
  overlay();
  line.at(n);
}

/** Bend and butt angle of this frame in words. */
function read() {
  const c = data.casts.find(k => n >= k.from && n < k.from + k.bend.length);
  if (!c) return '';
  const bend = c.bend[n - c.from], butt = c.butt[n - c.from];
  return (bend === null ? '' : ' · bend ' + Math.max(0, bend).toFixed(0) + ' %') + (butt === null ? '' : ' · butt ' + butt.toFixed(0) + '°');
}

const line = timeline($('curves'), {
  mayMove,
  show: frame => show(frame),
  put: (id, frame) => put(id, frame),
  picked: id => choose(id)
});
const pencil = sketch({
  says: words => { says.textContent = words; },
  changed: () => {
    for (const [id, points] of [['draw', 2], ['angle', 3]]) $(id).setAttribute('aria-pressed', String(pencil.wanted() === points));
    overlay();
  },
  done: points => {
    shown = points;
    $('drawing').value = points.map(p => p[0].toFixed(1) + ',' + p[1].toFixed(1)).join(' ');
    says.textContent = points.length === 3 ? 'An angle of ' + degrees(points).toFixed(0) + '°. It is kept with the note.' : 'The line is kept with the note.';
    overlay();
  },
  start: () => ((data.frames[n] || {}).tip || [data.width / 2, data.height / 2]).slice(0, 2)
});

function stroke(points, cls, width) {
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
    stroke(p, 'o-blank', 1.2 * u);
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
  drawn(u, r);
}

/** The line or angle that is being drawn, was just drawn, or belongs to the note that is looked at. */
function drawn(u, r) {
  const p = pencil.wanted() ? pencil.points() : shown;
  if (p.length > 1) stroke(p.map(q => q[0].toFixed(1) + ',' + q[1].toFixed(1)), 'o-line', 1.4 * u);
  const angle = degrees(p);
  if (angle !== null) {
    const text = el('text', { x: p[1][0] + 2 * r, y: p[1][1] - 2 * r, class: 'o-words', 'font-size': 16 * data.width / lens.getBoundingClientRect().width }, over, angle.toFixed(0) + '°');
    text.setAttribute('stroke-width', Number(text.getAttribute('font-size')) / 5);
  }
  const c = pencil.cursor();
  if (c) for (const cls of ['under', 'o-line']) {
    el('path', { d: `M${c[0] - 2 * r} ${c[1]}h${4 * r}M${c[0]} ${c[1] - 2 * r}v${4 * r}`, class: cls, 'stroke-width': (cls === 'under' ? 3 : 1.4) * u }, over);
  }
}

function moments() {
  const box = $('moments');
  box.replaceChildren();
  data.casts.forEach(c => c.events.forEach(e => {
    const b = document.createElement('button');
    b.type = 'button';
    b.dataset.id = e.id;
    b.textContent = (data.casts.length > 1 ? 'Cast ' + c.number + ': ' : '') + e.number + ' ' + e.name;
    b.addEventListener('click', () => { show(e.frame); line.pick(e.id); });
    box.append(b);
  }));
}

/** A moment was chosen on the time line: it is the one that can be put on this frame. */
function choose(id) {
  if ($('which')) $('which').value = id;
  for (const b of $('moments').children) b.setAttribute('aria-pressed', String(b.dataset.id === id));
}

async function put(id, frame) {
  show(frame);
  const kept = await post(home + '/corrections', { seconds: data.times[frame], part: id });
  if (kept) says.textContent = 'Reading the cast from your mark …';
  return kept;
}

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
  settle();
  if (await post(home + '/corrections', { seconds: data.times[n], part: name, x: p[0].toFixed(2), y: p[1].toFixed(2) })) {
    says.textContent = 'Following the rod from your mark …';
  }
}

function settle() {
  moving = null;
  $('move')?.setAttribute('aria-pressed', 'false');
  overlay();
}

// One finger or the mouse: on the chosen mark it drags the mark, else along it steps frames (or moves a magnified picture);
// two fingers magnify. A mark keeps its distance to the finger, which would hide it.
const fingers = new Map();
let held = null, spread = 0;
stage.addEventListener('pointerdown', e => {
  if (!data) return;
  stage.setPointerCapture(e.pointerId);
  fingers.set(e.pointerId, e);
  if (fingers.size === 2) { held = null; pencil.stop(); settle(); return; }
  const p = point(e), f = moving ? moving.at : mayMove ? (data.frames[n] || {})[part()] : null;
  const near = f && Math.hypot(f[0] - p[0], f[1] - p[1]) < 28 * data.width / lens.getBoundingClientRect().width;
  if (pencil.wanted()) { pencil.down(p); held = { kind: 'line' }; }
  else if (moving || near) {
    held = { kind: 'mark', off: near ? [f[0] - p[0], f[1] - p[1]] : [0, 0], x: e.clientX, y: e.clientY, far: !near };
    moving = { part: part(), at: near ? [f[0], f[1]] : p };
  } else held = { kind: zoom > 1 ? 'pan' : 'step', x: e.clientX, y: e.clientY, n, panX, panY };
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
  } else if (held && held.kind === 'line') pencil.move(point(e));
  else if (held && held.kind === 'mark') {
    held.far = held.far || Math.hypot(e.clientX - held.x, e.clientY - held.y) > 2;
    const p = point(e);
    moving.at = [clamp(p[0] + held.off[0], 0, data.width), clamp(p[1] + held.off[1], 0, data.height)];
    overlay();
  } else if (held && held.kind === 'step') show(held.n + Math.trunc((e.clientX - held.x) / 12));
  else if (held && held.kind === 'pan') { panX = held.panX + e.clientX - held.x; panY = held.panY + e.clientY - held.y; magnify(1); }
});
function lift(e) {
  fingers.delete(e.pointerId);
  spread = 0;
  if (held && held.kind === 'mark' && moving) {
    if (held.far) keep(moving.part, moving.at); else settle();
  }
  if (held && held.kind === 'line') pencil.up();
  held = null;
}
stage.addEventListener('pointerup', lift);
stage.addEventListener('pointercancel', e => { held = null; settle(); lift(e); });
stage.addEventListener('wheel', e => {
  e.preventDefault();
  if (e.ctrlKey) magnify(e.deltaY < 0 ? 1.2 : 1 / 1.2, e.clientX, e.clientY);
  else show(n + Math.sign(e.deltaY));
}, { passive: false });

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
stage.addEventListener('keydown', e => {
  if (!data) return;
  const a = ARROWS[e.key];
  const s = e.shiftKey ? 10 : 1;
  if (pencil.wanted() && a) pencil.arrow(s * a[0], s * a[1], data.width, data.height);
  else if (pencil.wanted() && e.key === 'Enter') pencil.enter();
  else if (pencil.wanted() && e.key === 'Escape') pencil.stop();
  else if (moving && a) {
    moving.at = [clamp(moving.at[0] + s * a[0], 0, data.width), clamp(moving.at[1] + s * a[1], 0, data.height)];
    overlay();
  } else if (moving && e.key === 'Enter') keep(moving.part, moving.at);
  else if (moving && e.key === 'Escape') settle();
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
if (mayMove) {
  $('move').addEventListener('click', () => {
    const f = (data.frames[n] || {})[part()];
    moving = { part: part(), at: f ? [f[0], f[1]] : [data.width / 2, data.height / 2] };
    $('move').setAttribute('aria-pressed', 'true');
    stage.focus();
    overlay();
  });
  $('hidden').addEventListener('click', () => post(home + '/corrections', { seconds: data.times[n], part: part(), hidden: true }));
  $('put').addEventListener('click', () => put($('which').value, n));
  $('undo').addEventListener('click', () => post(home + '/undo', {}));
}
for (const [id, points] of [['draw', 2], ['angle', 3]]) {
  $(id).addEventListener('click', () => {
    if (pencil.wanted() === points) { pencil.stop(); return; }
    pencil.begin(points);
    stage.focus();
  });
}
document.addEventListener('submit', async e => {
  if (!e.target.classList.contains('note')) return;
  e.preventDefault();
  if (await post(e.target.action, new FormData(e.target)) && e.target.querySelector('#words')) {
    e.target.reset();
    $('drawing').value = '';
    shown = [];
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
  shown = (li.dataset.drawing || '').split(' ').filter(Boolean).map(p => p.split(',').map(Number));
  show((i < 0 ? data.times.length : i) - 1);
  stage.scrollIntoView({ block: 'nearest' });
});

let version = -1;
new EventSource(home + '/live').addEventListener('standing', e => {
  const [state, v, , , words] = e.data.split('\t');
  if (version >= 0 && Number(v) !== version) load().then(() => {
    says.textContent = 'Followed anew.';
    $('review').dataset.drawn = v;
  });
  version = Number(v);
  $('review').dataset.version = v;
  $('review').dataset.state = state;
  if (state === 'following' || state === 'working') says.textContent = words;
  if (state === 'failed' || (state === 'done' && words)) says.textContent = words;
});
load();
