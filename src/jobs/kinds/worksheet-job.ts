/** A worksheet computed beside the page: workings and answers are data from anywhere, and who asked can end the worker at any time. */
import { loadEstimate, readLinks } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import { rowOf } from './sheet-job.ts';
import { readSkill } from './sheet-skill.ts';
import type { WorksheetNumbers, WorksheetRequest } from './worksheet-data.ts';

async function compute({ worksheet, open, measure, ...asked }: WorksheetRequest): Promise<WorksheetNumbers> {
  const by = await loadForJob(loadEstimate);
  const { skill, sheet, questions, answers } = worksheet;
  const isOpen = (q: number): boolean => open === 'all' || open.includes(q);
  const reads = sheet.lines.some((line) => line.includes('{')) || questions.some((_, q) => isOpen(q));
  const result = reads ? await readSkill({ ...asked, file: skill }) : undefined;
  const written = answers.map((one, q) => ({ ...one, isNumber: questions[q].kind === 'number' }));
  const own = by.computeStudentSheet(sheet.lines, written, (lines) => readLinks(lines, result));
  return {
    sheet: own.lines.map((line) => rowOf(line, by, measure)),
    workings: own.workings.map((line) => line && rowOf(line, by, measure)),
    answers: questions.map((q, i) =>
      q.kind === 'number' ? by.readAnswerIn(answers[i].text ?? '', q.unit) : undefined,
    ),
    simulated: questions.map((q, i) =>
      q.kind === 'number' && isOpen(i) ? by.calcKeyValue(q, readLinks([q.simulated], result)) : undefined,
    ),
    ...(open === 'all'
      ? {
          givenAway: questions.map((q) => (q.kind === 'number' ? by.linesThatGiveAway(sheet.lines, q.simulated) : [])),
        }
      : {}),
  };
}

export const worksheetJob: JobKind<WorksheetRequest, undefined, never, WorksheetNumbers> = {
  open: (request) =>
    // biome-ignore lint/correctness/useYield: a worksheet has no steps between
    async function* () {
      return await compute(request);
    },
};
