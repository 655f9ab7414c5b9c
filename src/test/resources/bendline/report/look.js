// What a reader's eye would trip over. Each check returns sentences, none if all is well.

function shown(e) {
  return e.checkVisibility({ contentVisibilityAuto: true, opacityProperty: true, visibilityProperty: true })
    && e.getClientRects().length > 0;
}

function name(e) {
  return e.tagName.toLowerCase() + (e.id ? '#' + e.id : '') + ' "' + (e.textContent || '').trim().slice(0, 40) + '"';
}

// Kept for screen readers only.
function unseen(e) {
  for (let p = e; p; p = p.parentElement) {
    if (getComputedStyle(p).clipPath === 'inset(50%)') return true;
  }
  return false;
}

// Every element that itself holds letters.
function lettered() {
  const out = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const e = walker.currentNode.parentElement;
    const spoken = walker.currentNode.textContent.trim() && !['TITLE', 'title', 'STYLE', 'style'].includes(e.tagName);
    if (spoken && shown(e) && !unseen(e) && !out.includes(e)) out.push(e);
  }
  return out;
}

function overflow() {
  const out = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide) out.push('the page scrolls sideways');
  for (const e of document.querySelectorAll('body *')) {
    if (!shown(e) || e.closest('.strip, svg *')) continue;
    const r = e.getBoundingClientRect();
    if (r.width > 1 && (r.right > wide + 1 || r.left < -1)) out.push(name(e) + ' sticks out');
  }
  for (const t of document.querySelectorAll('svg text')) {
    if (!shown(t)) continue;
    const r = t.getBoundingClientRect();
    const s = t.ownerSVGElement.getBoundingClientRect();
    if (r.left < s.left - 2 || r.right > s.right + 2 || r.top < s.top - 2 || r.bottom > s.bottom + 2) {
      out.push(name(t) + ' is cut by its drawing');
    }
  }
  return out;
}

// Letters over other letters, line by line; a tenth of a line may touch.
function overlaps() {
  const boxes = [];
  for (const e of lettered()) {
    for (const node of e.childNodes) {
      if (node.nodeType !== 3 || !node.textContent.trim()) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const r of range.getClientRects()) {
        if (r.width > 1 && r.height > 1) boxes.push({ e, r });
      }
    }
  }
  boxes.sort((a, b) => a.r.top - b.r.top);
  const out = [];
  for (let i = 0; i < boxes.length; i++) {
    for (let k = i + 1; k < boxes.length && boxes[k].r.top < boxes[i].r.bottom; k++) {
      const a = boxes[i];
      const b = boxes[k];
      if (a.e === b.e || a.e.closest('.strip') !== b.e.closest('.strip')) continue;
      const across = Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left);
      const down = Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top);
      if (across > 1.5 && down > 0.4 * Math.min(a.r.height, b.r.height)) out.push(name(a.e) + ' over ' + name(b.e));
    }
  }
  return out;
}

function small() {
  return lettered()
    .filter(e => {
      const svg = e.closest('svg');
      const scale = svg && svg.viewBox.baseVal ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
      return parseFloat(getComputedStyle(e).fontSize) * scale < 11.99;
    })
    .map(e => name(e) + ' is under 12 px');
}

function rgba(text) {
  const n = text.match(/[\d.]+/g).map(Number);
  return n.length === 4 ? n : [...n, 1];
}

// Relative luminance and contrast as WCAG 2.2 defines them.
function luminance(c) {
  const [r, g, b] = c.slice(0, 3).map(v => {
    const s = v / 255;
    return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function ground(e) {
  for (let p = e; p; p = p.parentElement) {
    const c = rgba(getComputedStyle(p).backgroundColor);
    if (c[3] > 0) return c;
  }
  return [255, 255, 255, 1];
}

function contrast() {
  const out = [];
  for (const e of lettered()) {
    const s = getComputedStyle(e);
    const ink = rgba(e.closest('svg') ? s.fill : s.color);
    const a = luminance(ink);
    const b = luminance(ground(e));
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (ratio < 4.5) out.push(name(e) + ' has a contrast of ' + ratio.toFixed(2));
  }
  return out;
}

// Lines of charts and frames of verdicts carry meaning: 3 to 1 (WCAG 2.2, 1.4.11).
function lines() {
  const out = [];
  const style = getComputedStyle(document.documentElement);
  const paper = document.createElement('span');
  document.body.append(paper);
  const seen = n => {
    paper.style.color = style.getPropertyValue(n);
    return rgba(getComputedStyle(paper).color);
  };
  const ground = luminance(seen('--paper'));
  for (const n of ['--ink', '--soft', '--blank', '--tip', '--rig']) {
    const l = luminance(seen(n));
    const ratio = (Math.max(l, ground) + 0.05) / (Math.min(l, ground) + 0.05);
    if (ratio < 3) out.push(n + ' has a contrast of ' + ratio.toFixed(2));
  }
  paper.remove();
  return out;
}

function pictures() {
  const out = [];
  for (const i of document.images) {
    if (!i.complete || i.naturalWidth === 0) out.push(i.alt + ' does not load');
    if (!i.alt || i.alt.length < 10) out.push('a picture has no words');
  }
  if (document.images.length === 0) out.push('there is no picture');
  return out;
}

function headings() {
  const out = [];
  const all = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')];
  if (all.filter(h => h.tagName === 'H1').length !== 1) out.push('not one h1');
  let last = 0;
  for (const h of all) {
    const level = Number(h.tagName[1]);
    if (level > last + 1) out.push(name(h) + ' skips a level');
    last = level;
  }
  return out;
}

// On paper nothing stays folded away.
function unfolded() {
  return [...document.querySelectorAll('.folded p, .folded dd, .folded td')].filter(e => !shown(e))
    .map(e => name(e) + ' is folded away');
}
