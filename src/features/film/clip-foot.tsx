/** Under the plate: how much of A is seen over the clip, or both apart; and what is missing to lay it there. */
import { Show } from 'solid-js';
import { useClipPosing } from './clip-pose-state.ts';
import { ClipPoseButtons } from './clip-pose-tools.tsx';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** What has to be set before A is drawn; undefined: nothing. */
function missingOf(desk: ClipDesk): string | undefined {
  if (desk.sight() && desk.instant()) return undefined;
  const { scale, stand } = desk.measuring();
  const fault = desk.timesFault();
  if (fault !== undefined) return fault;
  if (desk.frames() === undefined) return t.needs.rate;
  if (!desk.instant()) return t.needs.takeoff;
  if (!scale) return t.needs.scale;
  return stand ? t.needs.camera : t.needs.stand;
}

export function ClipFoot(props: { desk: ClipDesk }) {
  const posing = useClipPosing();
  const word = (): string => {
    const share = props.desk.figure();
    if (share < 0.25) return t.figures.none;
    return share > 0.75 ? t.figures.full : t.figures.half;
  };
  return (
    <div class="clip-foot">
      <Show
        when={missingOf(props.desk)}
        fallback={
          <>
            <Show when={!props.desk.isStill() && !props.desk.isApart()}>
              <ClipPoseButtons posing={posing} />
            </Show>
            <label class="clip-figure-share">
              <b>{t.figure}</b>
              <input
                type="range"
                min="0"
                max="1"
                step="0.05"
                value={props.desk.figure()}
                disabled={props.desk.isApart()}
                aria-valuetext={word()}
                onInput={(e) => props.desk.setFigure(Number(e.currentTarget.value))}
              />
              <span>{word()}</span>
            </label>
            <button
              type="button"
              class="link"
              aria-pressed={props.desk.isApart()}
              onClick={() => props.desk.setApart(!props.desk.isApart())}
            >
              {props.desk.isApart() ? t.together : t.apart}
            </button>
          </>
        }
      >
        {(missing) => <p class="quiet clip-missing">{missing()}</p>}
      </Show>
    </div>
  );
}
