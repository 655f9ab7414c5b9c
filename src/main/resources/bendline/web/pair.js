'use strict';
const at = document.getElementById('at'), says = document.getElementById('says'), NS = 'http://www.w3.org/2000/svg';
const films = [...document.querySelectorAll('figure.film')].map(f => ({
  box: f, home: '/clips/' + f.dataset.clip, img: f.querySelector('img'), lay: f.querySelector('svg'), number: Number(f.querySelector('.cast').value)
}));
const STEP = 1 / 60;
let playing = 0;

const frameAt = (film, s) => {
  let i = film.data.times.findIndex(t => t > s + 1e-6);
  return (i < 0 ? film.data.times.length : i) - 1;
};
const blank = (film, n) => (film.data.frames[Math.max(0, n)] || {}).blank;
const length = b => { let l = 0; for (let i = 2; i < b.length; i += 2) l += Math.hypot(b[i] - b[i - 2], b[i + 1] - b[i - 1]); return l; };

function line(film, b, cls, dash) {
  const w = Math.max(film.data.width, film.data.height) / 320;
  const p = [];
  for (let i = 0; i < b.length; i += 2) p.push(b[i] + ',' + b[i + 1]);
  for (const c of ['under', cls]) {
    const e = document.createElementNS(NS, 'polyline');
    e.setAttribute('points', p.join(' '));
    e.setAttribute('class', c);
    e.setAttribute('stroke-width', c === 'under' ? 2.2 * w : w);
    if (dash && c !== 'under') e.setAttribute('stroke-dasharray', 4 * w + ' ' + 3 * w);
    film.lay.append(e);
  }
}

function show() {
  const s = Number(at.value) * STEP;
  says.textContent = Math.abs(s) < 1e-9 ? 'At the release' : Math.abs(s).toFixed(2) + ' s ' + (s < 0 ? 'before' : 'after') + ' the release';
  at.setAttribute('aria-valuetext', says.textContent);
  films.forEach(f => { f.n = Math.max(0, frameAt(f, f.release + s * f.data.slowMotionFactor)); });
  films.forEach((f, k) => {
    const other = films[1 - k];
    f.img.src = f.home + '/frames/' + f.n + '.jpg';
    f.img.alt = 'Cast ' + 'AB'[k] + ', ' + says.textContent;
    f.lay.replaceChildren();
    const own = blank(f, f.n), o = blank(other, other.n);
    if (own && o) {
      const scale = length(own) / length(o), turn = f.side === other.side ? 1 : -1, laid = [];
      for (let i = 0; i < o.length; i += 2) laid.push(own[0] + turn * scale * (o[i] - o[0]), own[1] + scale * (o[i + 1] - o[1]));
      line(f, laid, 'o-line', true);
    }
    if (own) line(f, own, 'o-blank', false);
  });
}

function play() {
  clearInterval(playing);
  const was = playing;
  playing = 0;
  document.getElementById('play').textContent = was ? 'Play' : 'Pause';
  if (!was) {
    playing = setInterval(() => {
      if (Number(at.value) >= Number(at.max)) { play(); return; }
      at.value = Number(at.value) + 1;
      show();
    }, 4000 * STEP);
  }
}

async function load() {
  for (const f of films) {
    const r = await fetch(f.home + '/followed.json', { cache: 'no-store' });
    if (!r.ok) { says.textContent = 'The pictures of one cast are not at hand: open its clip and step through it once.'; return; }
    f.data = await r.json();
    const cast = f.data.casts.find(c => c.number === f.number);
    const release = cast && cast.events.find(e => e.id === 'release');
    if (!release) { says.textContent = 'The release of one cast can\'t be told, so they can\'t be locked.'; return; }
    f.release = release.seconds;
    const first = blank(f, cast.first), last = blank(f, release.frame);
    f.side = first && last && last[last.length - 2] < first[first.length - 2] ? 'left' : 'right';
    f.lay.setAttribute('viewBox', '0 0 ' + f.data.width + ' ' + f.data.height);
  }
  at.addEventListener('input', show);
  document.getElementById('back').addEventListener('click', () => { at.value = Number(at.value) - 1; show(); });
  document.getElementById('on').addEventListener('click', () => { at.value = Number(at.value) + 1; show(); });
  document.getElementById('play').addEventListener('click', play);
  show();
}
load();
