/**
 * The ways to hand on, in the order of their rows. To add one: a file `NAME-way.tsx` beside this with a `HandWay` (way.ts), and its
 * place in this list. What leaves is made of `hand.handed()?.file` (the ticks are applied in it) and of nothing else: never of the
 * document itself. Long work says how far it is by `hand.work`, and what fails by throwing, or `hand.fail`. The row, its pegs, its
 * button and its keys are drawn from the fields; settings and preview are its `View`.
 */
import { cardWay } from './card-way.tsx';
import { codeWay } from './code-way.tsx';
import { fileWay } from './file-way.tsx';
import { linkWay } from './link-way.tsx';
import { movingWay } from './moving-way.tsx';
import { picturesWay } from './pictures-way.tsx';
import { reportWay } from './report-way.tsx';
import { shareWay } from './share-way.tsx';
import type { HandWay } from './way.ts';

export const ways: readonly HandWay[] = [
  linkWay,
  codeWay,
  cardWay,
  picturesWay,
  movingWay,
  reportWay,
  fileWay,
  shareWay,
];
