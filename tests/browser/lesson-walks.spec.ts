// The lessons that are their own script: on the device of their reader each is done as it is written, and the page says what they quote.
import { expect, type Page } from '@playwright/test';
import { isWhole } from '../corpus.ts';
import { openFirst } from './bench.ts';
import { test } from './kept-files.ts';
import { listLessons, parseSteps, readLesson } from './lesson-script.ts';
import { walkLesson } from './lesson-walk.ts';

/** `npm test` walks one of each reader. */
async function walkAll(page: Page, reader: 'coach' | 'class' | 'lab', hasTouch: boolean): Promise<void> {
  await openFirst(page);
  const names = listLessons(reader);
  expect(names.length).toBeGreaterThanOrEqual(3);
  for (const name of isWhole ? names : names.slice(0, 1))
    await walkLesson({ page, hasTouch, waits: 45_000 }, name, parseSteps(readLesson(name)));
}

test('the lessons for a coach, on a tablet', { tag: '@tablet' }, async ({ page }) => {
  await walkAll(page, 'coach', true);
});

test('the lessons for a class, on a laptop', { tag: '@desktop' }, async ({ page }) => {
  await walkAll(page, 'class', false);
});

test.describe('on a large screen', () => {
  test.use({ viewport: { width: 1920, height: 1080 } });

  test('the lessons for a lab', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
    // how sensitive a giant is, and its window, is many swings
    test.slow();
    await walkAll(page, 'lab', false);
  });
});

test('a lesson that is wrong fails, with its step and its words', { tag: '@desktop' }, async ({ page }) => {
  await openFirst(page);
  const walk = (step: string): Promise<void> =>
    walkLesson({ page, hasTouch: false, waits: 300 }, 'made up', parseSteps(`# Made up\n\n1. Look.\n2. ${step}`));
  await walk('It says "No somersault, 1.00 twist left".');
  // another number, and the tail of one
  await expect(walk('It says "No somersault, 1.01 twists left".')).rejects.toThrow(
    'made up, step 2: says No somersault, 1.01 twists left',
  );
  await expect(walk('It says "00 twist left".')).rejects.toThrow('made up, step 2: says 00 twist left');
  // said to screen readers alone
  await expect(walk('It says "revolutions per second".')).rejects.toThrow('says revolutions per second');
  await expect(walk('Press **Arms wide against arms out**.')).rejects.toThrow(
    'made up, step 2: press Arms wide against arms out',
  );
  // more than one is named so
  await expect(walk('Press **Arms**.')).rejects.toThrow('made up, step 2: press Arms');
  await expect(walk('Write "2" into **Air times**.')).rejects.toThrow('made up, step 2: write 2, Air times');
  await expect(walk('Draw the end of **Tuck** to 0.30 s.')).rejects.toThrow('made up, step 2: draw Tuck ends, 0.3');
});
