/** The answers of a class read and set against one flight, a student a step. */
import { type ClassTable, calcClassTable, loadEstimate } from '../../../sim/index.ts';
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
      const asksNumber = questions.some(({ kind }) => kind === 'number');
      const result = asksNumber ? await readSkill({ ...asked, file: skill }) : undefined;
      const keys = by.calcKeys(questions, result);
      const read = [];
      for (const { worksheet } of given.handed) {
        read.push(by.readLockedAnswers(questions, worksheet.answers));
        if (yield { done: read.length, all: given.handed.length }) break;
      }
      return calcClassTable(given, keys, read);
    },
};
