/** Which two curves are under the shapes of tablet and phone: those of the story, the second of them by choice. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import { unitOf } from '../../ui/units.ts';
import type { FirstRows } from '../first-rows.ts';
import { useShell } from '../page.ts';
import { texts } from '../words.ts';
import type { TouchPlot } from './touch-ground.tsx';
import { besidePlots, firstPlots, type PlotName } from './touch-plots.ts';
import { touchTexts as t } from './touch-words.ts';

const p = texts.plots;

export interface TouchRows {
  readonly plots: Accessor<readonly TouchPlot[]>;
  readonly kept: Accessor<PlotName | undefined>;
  keep(kind: PlotName | undefined): void;
}

export function useTouchRows(rows: Accessor<FirstRows>): TouchRows {
  const [kept, setKept] = createSignal<PlotName>();
  // the story is the same at every instant: the curves are made again with another flight only
  const shell = useShell();
  const names = createMemo(() => besidePlots(shell.beside.shown()?.turn) ?? firstPlots(rows()), undefined, {
    equals: (a, b) => a.join() === b.join(),
  });
  return {
    kept,
    keep: (kind) => void setKept(kind),
    plots: createMemo(() => [
      plotOf(names()[0], 1.9),
      plotOf((shell.beside.shown() ? undefined : kept()) ?? names()[1], 1),
    ]),
  };
}

const plotOf = (kind: PlotName, share: number): TouchPlot => ({ kind, share, ...words(kind) });

function words(kind: PlotName): { readonly title: string; readonly unit: string } {
  switch (kind) {
    case 'longMoment':
    case 'lateralMoment':
      return { title: t.spread, unit: unitOf('moment') };
    case 'moments':
      return { title: p.moments, unit: unitOf('moment') };
    case 'tilt':
      return { title: p.tilt, unit: '' };
    case 'momentum':
      return { title: p.momentum, unit: unitOf('momentum') };
    case 'energy':
      return { title: p.energy, unit: unitOf('energy') };
    default:
      return { title: p.kinds[kind], unit: unitOf('rate') };
  }
}
