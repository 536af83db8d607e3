import { assessFit, CUES, describeFit, InputError, renderPlan, TABLES } from 'elbowroom';

const form = document.querySelector('#room');
const problem = document.querySelector('#problem');
const answer = document.querySelector('#answer');

for (const [id, { name }] of Object.entries(TABLES)) form.elements.table.add(new Option(name, id));
for (const { id, name } of Object.values(CUES)) form.elements.cue.add(new Option(name, id));
form.elements.table.value = 'pool-8ft-home';
form.elements.cue.value = 'cue-57in';

/** What the form asks, as the library takes it: lengths may stay text with their unit. */
function question() {
  const { roomLength, roomWidth, table, cue } = form.elements;
  const [x, y] = [roomLength.value, roomWidth.value];
  return {
    room: {
      outline: [
        [0, 0],
        [x, 0],
        [x, y],
        [0, y],
      ],
    },
    table: table.value,
    cues: [CUES[cue.value].length],
    detail: 'shots',
  };
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  problem.textContent = '';
  answer.replaceChildren();
  try {
    const asked = question();
    const report = assessFit(asked);
    const words = document.createElement('p');
    words.id = 'words';
    words.style.whiteSpace = 'pre-line';
    words.textContent = describeFit(report, { units: 'cm' });
    const drawing = document.createElement('img');
    drawing.alt = 'Plan of the room with the table, to scale';
    // As a picture of its own, nothing of the drawing can act in the page.
    drawing.src = `data:image/svg+xml,${encodeURIComponent(renderPlan(asked, report, { theme: 'light' }))}`;
    answer.append(words, drawing);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    problem.textContent = error.problems.map(({ message }) => message).join(' ');
  }
});
