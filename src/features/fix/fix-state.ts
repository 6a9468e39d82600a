/** "Fix the landing": looked for beside the page, offered one at a time on the answer line and the ruler, taken at a press. */
import { type Accessor, createComputed, createSignal, on } from 'solid-js';
import type { SkillFile, SkillVerdict } from '../../../sim/index.ts';
import { wordLeft } from '../../../sim/words/left-words.ts';
import { loadPart } from '../../app/load-part.ts';
import { keptState, type Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { clausesOf } from '../../app/say/sentence-words.ts';
import { getSpans } from '../../document/spans.ts';
import type { FixedSkill } from '../../engine/fix.ts';
import { fixTexts as t } from './words.ts';

interface FixState {
  /** there is something to fix by its verdict, and nothing is being done about it */
  canAsk(verdict: SkillVerdict): boolean;
  /** changes tried, of how many; undefined: no search is under way */
  readonly progress: Accessor<{ readonly done: number; readonly all: number } | undefined>;
  /** the document before the fix that was just taken */
  readonly old: Accessor<SkillFile | undefined>;
  ask(): void;
  stop(): void;
  keepOld(): void;
}

const loadCue = loadPart(
  () => import('./fix-cue.ts'),
  (m) => m.wordCue,
);

/** s */
const LEAST_MARK = 5e-4;

function makeFixState(page: Page): FixState {
  const { services, shell, doc, flight } = page;
  const [progress, setProgress] = createSignal<{ done: number; all: number }>();
  const [old, setOld] = createSignal<SkillFile>();
  const [fixed, setFixed] = createSignal<SkillFile>();
  let cancel: (() => void) | undefined;

  const stop = (): void => {
    cancel?.();
    cancel = undefined;
    setProgress(undefined);
  };
  // what was looked for was another skill's
  createComputed(
    on(
      doc.file,
      (file) => {
        stop();
        shell.answer.clear('fix');
        if (fixed() !== file) setOld(undefined);
      },
      { defer: true },
    ),
  );

  const wordOf = (id: string): string => doc.file().shapes?.[id]?.word ?? services.presets.shapes[id]?.word ?? id;
  const take = (fix: FixedSkill, cue: string): void => {
    const before = doc.file();
    setFixed(fix.file);
    doc.edit(fix.file, cue);
    setOld(before);
  };

  /** Twists where they are wanted, and how it ends. */
  const endOf = ({ file, verdict }: FixedSkill): string =>
    clausesOf(verdict)
      .filter(({ place }) => place === 'touchdown' || (place === 'fastestTwist' && (file.target?.twists ?? 0) > 0))
      .map(({ runs }) => runs.map(({ text }) => text).join(''))
      .join(', ');

  const left = (): string | undefined => {
    const { pieces, leaves } = flight.result().apparatus;
    return wordLeft(leaves === undefined ? undefined : pieces[leaves].kind);
  };

  const offer = (fixes: readonly FixedSkill[], index: number, wordCue: Awaited<ReturnType<typeof loadCue>>): void => {
    const fix = fixes[index];
    const cue = wordCue(fix, wordOf, left());
    shell.answer.say({
      lead: `${cue}.`,
      rest: fix.asksMore ? `${t.would(endOf(fix))} ${t.asksMore}` : t.would(endOf(fix)),
      from: 'fix',
      marks: marksOf(fix.file),
      act: [
        { label: t.doIt, run: () => take(fix, cue) },
        ...(fixes.length > 1
          ? [{ label: t.another, run: () => offer(fixes, (index + 1) % fixes.length, wordCue) }]
          : []),
        { label: t.notNow, run: () => shell.answer.clear('fix') },
      ],
    });
  };

  /** Where edges of shapes would go on the ruler, from and to, s. */
  const marksOf = (file: SkillFile): [number, number][] => {
    const then = getSpans(file, services.presets.shapes, flight.anchors());
    return flight.spans().flatMap((now, i) =>
      (['from', 'to'] as const).flatMap((side): [number, number][] => {
        const moved = then[i]?.[side] ?? now[side];
        return Math.abs(moved - now[side]) > LEAST_MARK ? [[now[side], moved]] : [];
      }),
    );
  };

  const ask = (): void => {
    const result = flight.result();
    const file = doc.file();
    stop();
    setProgress({ done: 0, all: 1 });
    void Promise.all([services.load.fixing(), loadCue()]).then(
      ([engine, wordCue]) => {
        if (doc.file() !== file || !progress()) return;
        const run = engine.fix(result, ({ changes, of }) => setProgress({ done: changes, all: of }));
        cancel = run.cancel;
        run.done.then(
          ({ fixes, closest }) => {
            if (cancel !== run.cancel) return;
            stop();
            if (fixes.length > 0) offer(fixes, 0, wordCue);
            else {
              const rest = closest ? t.nearest(wordCue(closest, wordOf, left()), endOf(closest)) : t.noneRest;
              const act = [{ label: t.wider, run: () => shell.openTool('ask') }];
              shell.answer.say({ lead: t.none, rest, from: 'fix', act });
            }
          },
          (error: unknown) => {
            if (cancel !== run.cancel) return;
            stop();
            shell.answer.say({ lead: t.failed, rest: wordFault(error), from: 'fix' });
          },
        );
      },
      (error: unknown) => {
        stop();
        shell.answer.say({ lead: t.failed, rest: wordFault(error), from: 'fix' });
      },
    );
  };

  const isOffered = (): boolean => shell.answer.said()?.from === 'fix';
  return {
    canAsk: (verdict) =>
      !progress() &&
      !isOffered() &&
      !flight.result().draft &&
      flight.outcome().fault === undefined &&
      services.flying.needsFix(flight.result(), verdict),
    progress,
    old,
    ask,
    stop,
    keepOld: () => {
      const before = old();
      if (!before) return;
      setOld(undefined);
      putVersion(page, { name: t.oldName, file: before, isKept: true }, t.keepOld, () =>
        shell.notify({ text: t.keptOld }),
      );
    },
  };
}

export const useFixState = keptState(makeFixState);
