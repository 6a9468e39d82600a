// The steps of a lesson are read as they are written, and what is no form of a step is refused.
import { describe, expect, it, test } from 'vitest';
import { listLessons, parseSteps, readLesson } from '../browser/lesson-script.ts';

const actsOf = (step: string) => parseSteps(`# Made up\n\n1. ${step}`)[0].acts;

test('presses, keys, words, edges and quotes come in the order they are read', () => {
  expect(
    actsOf(
      '*Begin.* Touch **Find**, write "front tuck" and press Enter: "No twist". Press R, write "10" into **Knees** and draw the end of **Tuck** to 0.46 s.',
    ),
  ).toEqual([
    { kind: 'press', name: 'Find' },
    { kind: 'write', text: 'front tuck' },
    { kind: 'key', key: 'Enter' },
    { kind: 'says', quote: 'No twist' },
    { kind: 'key', key: 'R' },
    { kind: 'write', text: '10', field: 'Knees' },
    { kind: 'draw', end: 'Tuck ends', to: 0.46 },
  ]);
});

test.each(['Press Tab.', 'Press the up arrow.', 'It says "so.', 'Press **Find*.'])('%s is refused', (step) =>
  expect(() => actsOf(step)).toThrow('step 1 has what is no form of a step'),
);

test('what is quoted outside the steps would be held against nothing: it is refused', () => {
  expect(() => parseSteps('# Made up\n\nIt says "so".\n\n1. Press **Find**.')).toThrow('outside the steps');
  expect(() => parseSteps('# Made up\n\nNo steps.')).toThrow('one list of steps');
});

describe.each((['coach', 'class', 'lab'] as const).flatMap((reader) => listLessons(reader)))('%s', (name) => {
  const steps = parseSteps(readLesson(name));
  it('is short, and quotes the page', () => {
    expect(steps.length).toBeGreaterThanOrEqual(4);
    expect(steps.length).toBeLessThanOrEqual(6);
    expect(steps.flatMap(({ acts }) => acts).filter(({ kind }) => kind === 'says').length).toBeGreaterThanOrEqual(4);
  });
  it('says what not to conclude', () => expect(readLesson(name)).toContain('What not to conclude: '));
});
