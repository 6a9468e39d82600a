/** The phone, upright or on its side. */
import { Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { SpokenCut } from '../../features/instant/cut.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { useSize } from '../../ui/size.ts';
import { useCut, useExplanation } from '../cut-values.ts';
import { useFirstRows } from '../first-story.ts';
import { useShell } from '../page.ts';
import { PhoneSide } from './phone-side.tsx';
import { PhoneUpright } from './phone-upright.tsx';
import { ThumbBar } from './thumb-bar.tsx';
import { findTool } from './tools/tool-list.ts';
import { useTouchRows } from './touch-rows.ts';

/** px of the bar at the thumb: upright with room for the edge that the hand holds, on a screen that has it */
const THUMB = { tall: 128, small: 104, side: 50 } as const;
const TALL = 780;

export function PhoneLayout(props: { lanes: LaneList }) {
  const shell = useShell();
  let root!: HTMLDivElement;
  const size = useSize(() => root);
  const cut = useCut();
  const explanation = useExplanation();
  const story = useFirstRows();
  const rows = useTouchRows(story.rows);
  const isSide = (): boolean => size().width > size().height;
  const thumb = (): number => (isSide() ? THUMB.side : size().height >= TALL ? THUMB.tall : THUMB.small);
  return (
    <div class="phone" classList={{ 'phone-side': isSide() }} ref={root} style={{ '--thumb': `${thumb()}px` }}>
      <Show when={size().width > 0}>
        <Dynamic
          component={isSide() ? PhoneSide : PhoneUpright}
          lanes={props.lanes}
          cut={cut()}
          explanation={explanation()}
          story={story}
          rows={rows}
          size={size()}
          thumb={thumb()}
        />
        <SpokenCut cut={cut()} explanation={explanation()} />
      </Show>
      <ThumbBar cut={cut()} filled={findTool(shell.tool())?.fillsAir} />
    </div>
  );
}
