/** What the frame at the cursor is cautioned of. */

import { createMemo, Show } from 'solid-js';
import { useCursor, useFlight } from '../../app/page.ts';
import { calcPlace } from '../../app/plot/readout.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { boundsTexts } from './words.ts';

const b = boundsTexts;

export function Bounds() {
  const flight = useFlight();
  const cursor = useCursor();
  const said = createMemo(() => {
    const result = flight.result();
    const place = calcPlace(result.frames, cursor.at());
    const beyond = result.cautionsAt(place.i + Math.round(place.share));
    if (beyond.length === 0) return undefined;
    return b.beyond(b[beyond[0].kind](wordJoint(beyond[0].angle)), beyond.length - 1);
  });
  return (
    <p class={`word bounds ${said() ? 'beyond' : ''}`}>
      <Show
        when={said()}
        fallback={
          <Show when={flight.result().notCompared} fallback={b.none}>
            {/* one line: under it is the first value */}
            <span class="spoken">{b.noneOfRanges.spoken}</span>
            {b.noneOfRanges.seen}
          </Show>
        }
      >
        {(words) => <mark>{words()}</mark>}
      </Show>
    </p>
  );
}
