/** What was measured in a clip, as a section of the report: of what is handed on alone. */
import type { SkillFile } from '../../../sim/index.ts';
import { clipRows, wordFlown, wordMeasured } from '../../../sim/words/clip-words.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Clipping } from '../../engine/clip.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { ReportSection } from '../../paper/report.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { filmSectionTexts as t } from './film-section-words.ts';

/** Damaged, or of a body with other joints: the rest of the report says what it says. */
function tryRead<T extends object>(read: () => T): T | { readonly fault: string } {
  try {
    return read();
  } catch (error) {
    return { fault: wordFault(error) };
  }
}

/** One section for each clip; a file of another program's film has none. */
export function filmSections(handed: SkillFile, result: FlightResult, engine: Clipping): ReportSection[] {
  return (handed.recordings ?? []).flatMap((entry): ReportSection[] => {
    const read = tryRead(() => engine.read(entry, result));
    if ('fault' in read) return [{ heading: t.heading, text: [[{ text: t.unread(read.fault) }]] }];
    const { measured, times } = read;
    if (!times) return [];
    const rows = clipRows(times, engine.flown(times, result)).map((row) => [
      row.label,
      ...wordMeasured(row),
      wordFlown(row),
    ]);
    const { trueHz, scale, posed } = measured;
    return [
      {
        heading: t.heading,
        text: [
          [{ text: [trueHz === undefined ? t.rateOpen : t.rate(formatNumber(trueHz, 0)), t.errors].join(' ') }],
          [{ text: scale === undefined ? t.noScale : scale.kind === 'length' ? t.length : t.plane }],
          ...(posed.length > 0 ? [[{ text: t.posed(posed.length) }]] : []),
        ],
        table: { head: ['', t.clip, '±', t.flown], rows },
      },
    ];
  });
}
