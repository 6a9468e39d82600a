/** The answers of a class read and set against one flight, a student a step. */
import { type ClassTable, calcClassTable, loadEstimate, readLinks } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import { readSkill } from './sheet-skill.ts';
import type { ClassRequest } from './worksheet-data.ts';

interface Progress {
  readonly done: number;
  readonly all: number;
}

export const classJob: JobKind<ClassRequest, undefined, Progress, ClassTable> = {
  open: ({ class: given, ...asked }) =>
    async function* () {
      const by = await loadForJob(loadEstimate);
      const { questions, skill } = given.worksheet;
      const numbers = questions.map((q) => (q.kind === 'number' ? q : undefined));
      const result = numbers.some(Boolean) ? await readSkill({ ...asked, file: skill }) : undefined;
      const keys = numbers.map((q) => q && by.calcKeyValue(q, readLinks([q.simulated], result)));
      const read = [];
      for (const { worksheet } of given.handed) {
        read.push(
          numbers.map((q, i) => {
            const { text = '', lockedAt } = worksheet.answers[i];
            return q && lockedAt !== undefined ? by.readAnswerIn(text, q.unit) : undefined;
          }),
        );
        if (yield { done: read.length, all: given.handed.length }) break;
      }
      return calcClassTable(given, keys, read);
    },
};
