/** What the skill as it is and its answers come to and cost, in columns: one unit a quantity, said once in its head. */
import type { JointShare, Solution } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import type { AskInput, OwnCost } from '../../engine/ask.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitBeside } from '../../ui/units.ts';
import { decimalsOfInput, numberIn, percent, unitIn } from './ask-words.ts';
import { askTexts as t } from './words.ts';

export interface CostRow {
  readonly cost: OwnCost;
  readonly margin: number | undefined;
  /** of what may change, by id */
  readonly values: ReadonlyMap<string, number>;
}

interface Cell {
  readonly text: string;
  /** more of it, where the number alone does not say all */
  readonly hint?: string;
}

interface CostColumn {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly hint: string;
  cell(row: CostRow): Cell;
}

/** What may change and is no time is beside the costs, as far as there is room. */
const MOST_INPUTS = 2;
const NONE: Cell = { text: '–' };

export function costColumns(
  inputs: readonly { readonly input: AskInput; readonly name: string }[],
  jointName: (angle: number) => string,
): CostColumn[] {
  const joint = (id: 'speed' | 'torque'): CostColumn => ({
    id,
    title: t.cost[id],
    unit: '%',
    hint: t.costMeans[id],
    cell: ({ cost }) => jointCell(cost[id], cost, jointName),
  });
  return [
    {
      id: 'momentum',
      title: t.cost.momentum,
      unit: unitBeside('momentum'),
      hint: t.costMeans.momentum,
      cell: ({ cost }) => ({ text: sayNumber('momentum', cost.momentum, 1) }),
    },
    ...inputs
      .filter(({ input }) => input.unit !== 's' && !/^takeoff\.h\.[yz]$/.test(input.id))
      .slice(0, MOST_INPUTS)
      .map(
        ({ input, name }): CostColumn => ({
          id: input.id,
          title: name,
          unit: unitIn(input.unit),
          hint: name,
          cell: ({ values }) => {
            const value = values.get(input.id) ?? input.value;
            return { text: numberIn(input.unit, value, decimalsOfInput(input.id, input.unit)) };
          },
        }),
      ),
    joint('speed'),
    joint('torque'),
    {
      id: 'margin',
      title: t.cost.margin,
      unit: '%',
      hint: t.costMeans.margin,
      cell: ({ margin }) => (margin === undefined ? NONE : { text: percent(margin) }),
    },
  ];
}

function jointCell(peak: JointShare | undefined, { notCompared }: OwnCost, nameOf: (angle: number) => string): Cell {
  if (!peak) return notCompared ? { text: '–', hint: notCompared.title } : NONE;
  const hint = nameOf(peak.angle);
  // of what is known, as the command line and the cautions have it
  if (!peak.beyond) return { text: formatNumber((100 * Math.abs(peak.value)) / peak.known, 0), hint };
  const why =
    peak.beyond === 'over' ? t.over3 : `${t.costMeans.fastTorque}: ${say('jointRate', peak.beyond.rate * DEG, 0)}`;
  return { text: t.beyond, hint: `${hint}, ${why}` };
}

export const rowOf = (solution: Solution, ids: readonly string[]): CostRow => ({
  cost: solution.cost,
  margin: solution.cost.margin,
  values: new Map(ids.map((id, i) => [id, solution.values[i]])),
});
