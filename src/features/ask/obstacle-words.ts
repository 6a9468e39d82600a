/** What is in the way of what is wanted, in the words of the page. */
import type { BlockSpan } from '../../document/spans.ts';
import type { ObstacleResult } from '../../engine/ask.ts';
import type { AskState } from './ask-state.ts';
import { type AskUnit, nameInput, sayIn } from './ask-words.ts';
import { askTexts as t } from './words.ts';

export function wordObstacle(state: AskState, spans: readonly BlockSpan[], o: ObstacleResult): string {
  const open = state.skill();
  if (o.kind === 'ending') return open?.spec.catch ? t.obstacle.missed : t.obstacle.ending;
  if (o.kind === 'touch') return t.obstacle.touch(o.solid);
  if (o.kind === 'limit') return o.limit === 'late' ? t.obstacle.late : t.obstacle.limit(t.limits[o.limit]);
  if (o.kind === 'wish') {
    const { wish, value } = o.term;
    const unit: AskUnit = state.asking()?.results.find((r) => r.id === wish.result)?.unit ?? 'count';
    const within = `${sayIn(unit, wish.value)} ± ${sayIn(unit, wish.tolerance)}`;
    return t.obstacle.wish(t.results[wish.result] ?? wish.result, sayIn(unit, value), within);
  }
  const name = open ? nameInput(o.input, spans, open.spec) : o.input;
  return t.obstacle[o.side](name, sayIn(state.inputOf(o.input)?.unit ?? o.unit, o.value), o.source);
}
