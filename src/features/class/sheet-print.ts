/** A student's sheet to the printer. */
import { type Accessor, onCleanup } from 'solid-js';
import { wordTimes } from '../../../sim/words/class-words.ts';
import { readTypeface } from '../../app/page-typeface.ts';
import { clearPages, printPages } from '../../app/print-pages.ts';
import { texts } from '../../app/words.ts';
import type { WorksheetNumbers } from '../../engine/class.ts';
import type { SheetPageRow } from '../../paper/sheet-page.ts';
import { sayDay } from '../../ui/dates.ts';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import { listGiven } from './given.ts';
import { isSameToThird } from './ratio.ts';
import type { SheetFlightState } from './sheet-flight.ts';
import { clockOf } from './time-stamp.ts';

const PICTURE = { count: 6, width: 1068, height: 330, size: 17 } as const;

export function usePrintSheet(work: Accessor<AnswerWork>, flight: SheetFlightState): { run(): Promise<void> } {
  onCleanup(clearPages);
  return {
    run: async () => {
      const found = flight();
      if (!found || 'reason' in found) return;
      const now = work();
      const worksheet = now.handedIn();
      const { paper, result } = found;
      const written = [worksheet.title, now.name(), now.group(), ...worksheet.answers.map(({ text = '' }) => text)];
      const typeface = await readTypeface(paper.isBeyondLatin(written.join(' ')));
      const date = sayDay(new Date());
      const numbers = now.numbers();
      await printPages(
        paper.sheetPage({
          title: worksheet.title,
          who: [now.name().trim() || `${t.name} ……………………`, now.group().trim(), date].filter(Boolean).join(', '),
          figures: paper.sheetFigures(found.flight, { ...PICTURE, isOpen: now.isComplete(), ink: 'paper' }),
          given: numbers
            ? listGiven(numbers.sheet).map(({ name, value, unit }) => `${name} ${value} ${unit}`.trim())
            : [],
          heads: {
            given: t.given,
            working: t.columns.working,
            answer: t.columns.answer,
            simulated: t.columns.simulated,
          },
          rows: worksheet.questions.map((_, i) => rowOf(now, numbers, i)),
          foot: t.printed.help,
          standing: texts.standingCaution,
          origin: paper.originOf(result, worksheet.skill),
          ...(typeface ? { typeface } : {}),
        }),
      );
    },
  };
}

function rowOf(work: AnswerWork, numbers: WorksheetNumbers | undefined, i: number): SheetPageRow {
  const worksheet = work.worksheet();
  const [question, answer] = [worksheet.questions[i], worksheet.answers[i]];
  const key = numbers?.simulated[i];
  const read = numbers?.answers[i];
  const found = key && 'value' in key && work.isOpen(i) ? key : undefined;
  const given = read && 'answer' in read ? read.answer.value : undefined;
  const isWords = question.kind === 'words';
  const shows = isWords && work.isOpen(i) ? (question.shows ?? '') : '';
  return {
    ask: question.ask,
    working: isWords ? '' : (answer.working ?? ''),
    answer: answer.text ?? '',
    lockedAt: answer.lockedAt ? t.lockedAt(clockOf(answer.lockedAt)) : t.printed.unlocked,
    simulated: found ? [found.figures, found.unit.name].filter(Boolean).join(' ') : shows,
    compared:
      found && given !== undefined && found.value !== 0
        ? isSameToThird(given, found.value)
          ? t.same
          : wordTimes(given / found.value)
        : '',
  };
}
