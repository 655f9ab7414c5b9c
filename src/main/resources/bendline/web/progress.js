'use strict';
const box = document.getElementById('standing');
const says = document.getElementById('says');
if (['waiting', 'working', 'following'].includes(box.dataset.state)) {
  const live = new EventSource('/clips/' + box.dataset.clip + '/live');
  live.addEventListener('standing', e => {
    const [state, , fraction, ahead, words] = e.data.split('\t');
    const bar = document.getElementById('bar');
    if (state === 'waiting') {
      says.textContent = words || 'Waits its turn: ' + Math.max(0, ahead) + ' before it.';
    } else if (state === 'working') {
      // Read out only when the stage changes.
      if (says.textContent !== words) says.textContent = words;
      if (bar) bar.value = Number(fraction);
    } else {
      live.close();
      location.reload();
    }
  });
}
