'use strict';
// Sends clips by the tus protocol 1.0 (https://tus.io/protocols/resumable-upload): the server remembers how much has come,
// so after a broken connection, a reload or a new start of either side we ask it and go on from there.
const proof = document.querySelector('meta[name=page]').content;
const CHUNK = 8 << 20;
const base = { 'Tus-Resumable': '1.0.0', 'X-Bendline-Page': proof };
const pause = ms => new Promise(done => setTimeout(done, ms));

function row(name) {
  const box = document.createElement('div');
  const says = document.createElement('p');
  const bar = document.createElement('progress');
  box.className = 'sent';
  bar.max = 1;
  bar.value = 0;
  bar.setAttribute('aria-label', 'Sent of ' + name);
  box.append(says, bar);
  document.getElementById('sending').append(box);
  return { say: t => { says.textContent = name + ': ' + t; }, at: f => { bar.value = f; }, says, bar };
}

function send(url, blob, offset, told) {
  return new Promise((done, broken) => {
    const x = new XMLHttpRequest();
    x.open('PATCH', url);
    Object.entries(base).forEach(([k, v]) => x.setRequestHeader(k, v));
    x.setRequestHeader('Content-Type', 'application/offset+octet-stream');
    x.setRequestHeader('Upload-Offset', offset);
    x.upload.onprogress = e => told(offset + e.loaded);
    x.onload = () => x.status === 204 ? done(Number(x.getResponseHeader('Upload-Offset'))) : broken(refusal(x.status, x.responseText));
    x.onerror = x.onabort = () => broken(new Error('the connection broke'));
    x.send(blob);
  });
}

function refusal(status, text) {
  const e = new Error(text || 'the server answered ' + status);
  e.final = status >= 400 && status < 500 && ![408, 409, 423, 429].includes(status) || status === 507;
  return e;
}

async function begin(file, key) {
  const known = localStorage.getItem(key);
  if (known) {
    const head = await fetch(known, { method: 'HEAD', headers: base });
    if (head.ok) return { url: known, offset: Number(head.headers.get('Upload-Offset')) };
    localStorage.removeItem(key);
  }
  const name = btoa(String.fromCharCode(...new TextEncoder().encode(file.name)));
  const made = await fetch('/files', { method: 'POST', headers: { ...base, 'Upload-Length': file.size, 'Upload-Metadata': 'filename ' + name } });
  if (made.status !== 201) throw refusal(made.status, await made.text());
  const url = made.headers.get('Location');
  localStorage.setItem(key, url);
  return { url, offset: 0 };
}

async function upload(file) {
  const shown = row(file.name);
  const key = 'bendline ' + [file.name, file.size, file.lastModified].join(' ');
  for (let tries = 0; ; tries++) {
    try {
      const { url, offset } = await begin(file, key);
      let at = offset;
      while (at < file.size) {
        at = await send(url, file.slice(at, at + CHUNK), at, n => {
          shown.at(n / file.size);
          shown.say(Math.floor(100 * n / file.size) + ' % sent');
        });
        tries = 0;
      }
      const clip = await (await fetch('/arrived/' + url.split('/').pop())).text();
      localStorage.removeItem(key);
      return arrived(shown, clip);
    } catch (e) {
      if (e.final || tries > 60) {
        shown.say(e.message);
        shown.bar.remove();
        return null;
      }
      shown.say('waiting to go on (' + e.message + ')');
      await pause(Math.min(10000, 500 * 2 ** tries));
    }
  }
}

function arrived(shown, clip) {
  shown.bar.remove();
  if (clip === 'other') {
    shown.say('another member has sent this clip already; ask them to share it');
    return null;
  }
  shown.say('is here. ');
  const a = document.createElement('a');
  a.href = clip ? '/clips/' + clip : '/';
  a.textContent = 'See how far it is';
  shown.says.append(a);
  return clip;
}

async function all(files) {
  const list = [...files];
  let last = null;
  for (const file of list) last = await upload(file);
  if (list.length === 1 && last) location.href = '/clips/' + last;
}

const pick = document.getElementById('pick');
const box = document.querySelector('.take');
pick.addEventListener('change', () => all(pick.files));
document.addEventListener('dragover', e => { e.preventDefault(); box.classList.add('over'); });
document.addEventListener('dragleave', () => box.classList.remove('over'));
document.addEventListener('drop', e => { e.preventDefault(); box.classList.remove('over'); all(e.dataTransfer.files); });
