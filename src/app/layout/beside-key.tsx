/** Which of two figures in one picture is which. */
import { VersionTag } from '../../features/compare/version-tag.tsx';
import type { Beside } from '../beside.ts';

export const BesideKey = (props: { beside: Beside }) => (
  <div class="beside-key">
    <p>
      <VersionTag letter="A" small /> {props.beside.own}
    </p>
    <p>
      <VersionTag letter={props.beside.letter} small /> {props.beside.other}
    </p>
  </div>
);
