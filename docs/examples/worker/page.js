const start = document.querySelector('#start');
const stop = document.querySelector('#stop');
const progress = document.querySelector('#progress');
const words = document.querySelector('#words');
let worker = null;

/** An L-shaped room with a post; a question is plain data, so it can be posted as it is. */
const question = {
  room: {
    outline: [
      ['0 m', '0 m'],
      ['6.2 m', '0 m'],
      ['6.2 m', '4.5 m'],
      ['2.6 m', '4.5 m'],
      ['2.6 m', '6.6 m'],
      ['0 m', '6.6 m'],
    ],
    obstacles: [{ name: 'the post', footprint: { center: ['1.65 m', '4.25 m'], diameter: '16 cm' } }],
  },
  table: 'pool-8ft-home',
  cues: ['57 in'],
  search: { gap: '0.1 mm' },
};

function end() {
  worker?.terminate();
  worker = null;
  start.disabled = false;
  stop.disabled = true;
}

start.addEventListener('click', () => {
  worker = new Worker('worker.bundle.js');
  start.disabled = true;
  stop.disabled = false;
  progress.value = 0;
  worker.onmessage = ({ data }) => {
    if (data.kind === 'progress') {
      progress.value = data.upperBound > 0 ? data.value / data.upperBound : 0;
      return;
    }
    progress.value = 1;
    words.textContent =
      data.kind === 'answer' ? data.words : data.problems.map(({ message }) => message).join('\n');
    end();
  };
  worker.postMessage(question);
});

// assessFit does not return before it has its answer, so a worker that is not wanted any more is ended from outside.
stop.addEventListener('click', end);
