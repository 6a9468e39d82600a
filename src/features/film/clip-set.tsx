/** Scale, place and way: crosses are taken up, and what they are long is typed. */
import { For, Match, Show, Switch } from 'solid-js';
import type { ClipMeasured, ClipScale, ClipSight, ClipStand } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { wordSightFaults } from '../../../sim/words/clip-words.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { sayDeg } from './clip-facts.tsx';
import { isPlacing, type PlacingHand } from './clip-placing.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

const HANDS: readonly PlacingHand[] = ['length', 'plane', 'post', 'feet'];
/** m */
const RANGE = { min: 0.05, max: 200, step: 0.01, decimals: 2 } as const;

export function ClipSet(props: { desk: ClipDesk }) {
  const measuring = (): ClipMeasured => props.desk.measuring();
  const hands = (): readonly PlacingHand[] =>
    HANDS.filter((hand) => hand !== 'post' || measuring().scale?.kind === 'plane');
  const placing = (): PlacingHand | undefined => {
    const now = props.desk.hand();
    return isPlacing(now) ? now : undefined;
  };
  const isSet = (hand: PlacingHand): boolean => {
    const { scale, stand } = measuring();
    if (hand === 'feet') return stand !== undefined;
    if (hand === 'post') return scale?.kind === 'plane' && (scale.posts?.length ?? 0) > 0;
    return scale?.kind === hand;
  };
  const left = (): string | undefined => {
    const sight = props.desk.sight();
    return sight && wordSightFaults(sight)[0];
  };
  return (
    <section class="clip-set" aria-label={t.place}>
      <h3>{t.place}</h3>
      <Show
        when={placing()}
        fallback={
          <ul>
            <For each={hands()}>
              {(hand) => (
                <li>
                  <button type="button" class="link" onClick={() => props.desk.setHand(hand)}>
                    {t.set[hand]}
                  </button>{' '}
                  <span class="quiet">{isSet(hand) ? t.isSet : ''}</span>
                </li>
              )}
            </For>
            <Show when={measuring().stand}>
              {(stand) => (
                <li>
                  <button type="button" class="link" onClick={() => props.desk.measure(otherWay(stand()), t.otherWay)}>
                    {t.otherWay}
                  </button>
                </li>
              )}
            </Show>
          </ul>
        }
      >
        {(hand) => <Placing desk={props.desk} hand={hand()} />}
      </Show>
      <Show when={props.desk.sight()}>
        {(sight) => (
          <p class="quiet">{[sayView(sight()), sayOffPlane(props.desk, sight())].filter(Boolean).join(' ')}</p>
        )}
      </Show>
      <Show when={props.desk.sightFault() ?? left()}>
        {(fault) => (
          <p class="why" role="status">
            {fault()}
          </p>
        )}
      </Show>
    </section>
  );
}

/** How the camera looks, and how that is known. */
function sayView({ view, tilt }: ClipSight): string {
  const looks = Number.isFinite(tilt.value) ? `${t.tilt(sayDeg(tilt.value, tilt.plusMinus), tilt.value >= 0)} ` : '';
  if (view.how === 'parallel') return `${looks}${t.views.parallel}`;
  return `${looks}${t.views[view.how](sayDeg(view.rad.value, view.rad.plusMinus))}`;
}

/** Where the athlete goes the other way in the picture than A does over it. */
const otherWay = (stand: ClipStand): Partial<ClipMeasured> => ({ stand: { ...stand, goesRight: !stand.goesRight } });

/** m: about as far as a hand is from the middle of the body */
const NEARER = 0.3;

function sayOffPlane({ room }: ClipDesk, sight: ClipSight): string {
  const share = room()?.engine.offPlane(sight, NEARER) ?? Number.NaN;
  return Number.isNaN(share) ? '' : t.offPlane(say('length', NEARER, 1), `${formatNumber(100 * share, 0)} %`);
}

function Placing(props: { desk: ClipDesk; hand: PlacingHand }) {
  // a field that goes while it has the focus gives what is in it once more
  const put = (part: Partial<ClipMeasured>): void => {
    if (isPlacing(props.desk.hand())) props.desk.past.draft(part);
  };
  const putScale = (change: (scale: ClipScale) => ClipScale): void => {
    const { scale } = props.desk.measuring();
    if (scale) put({ scale: change(scale) });
  };
  const putHeight = (i: number, heightM: number): void =>
    putScale((scale) =>
      scale.kind === 'plane'
        ? { ...scale, posts: scale.posts?.map((one, j) => (j === i ? { ...one, heightM } : one)) }
        : scale,
    );
  const length = () => {
    const { scale } = props.desk.measuring();
    return scale?.kind === 'length' ? scale : undefined;
  };
  const plane = () => {
    const { scale } = props.desk.measuring();
    return scale?.kind === 'plane' ? scale : undefined;
  };
  const stand = () => props.desk.measuring().stand;
  const view = (): number => (props.desk.sight()?.view.rad.value ?? Number.NaN) * DEG;
  const takeAway = (): void => {
    const now = plane();
    props.desk.abandonHand();
    if (props.hand === 'feet') props.desk.measure({ stand: undefined as never }, t.gone[props.hand]);
    else if (props.hand === 'post' && now) props.desk.measure({ scale: { ...now, posts: [] } }, t.gone[props.hand]);
    else props.desk.measure({ scale: undefined as never }, t.gone[props.hand]);
  };
  return (
    <div class="clip-placing">
      <p>{t.asks[props.hand]}</p>
      <Switch>
        <Match when={props.hand === 'length' && length()}>
          {(now) => (
            <NumberField
              label={t.length}
              unit="m"
              quantity="length"
              value={now().lengthM}
              {...RANGE}
              onChange={(lengthM) => putScale((scale) => ({ ...scale, lengthM }))}
            />
          )}
        </Match>
        <Match when={props.hand === 'plane' && plane()}>
          {(now) => (
            <>
              <NumberField
                label={t.width}
                unit="m"
                quantity="length"
                value={now().widthM}
                {...RANGE}
                onChange={(widthM) => putScale((scale) => ({ ...scale, widthM }))}
              />
              <NumberField
                label={t.depth}
                unit="m"
                quantity="length"
                value={now().depthM}
                {...RANGE}
                onChange={(depthM) => putScale((scale) => ({ ...scale, depthM }))}
              />
              <NumberField
                label={t.viewField}
                hint={props.desk.measuring().view === undefined ? t.viewSolved : undefined}
                unit="°"
                quantity="angle"
                value={view()}
                min={5}
                max={150}
                step={1}
                decimals={0}
                onChange={(deg) => put({ view: deg / DEG })}
              />
            </>
          )}
        </Match>
        <Match when={props.hand === 'post' && plane()}>
          {(now) => (
            <For each={now().posts ?? []}>
              {(post, i) => (
                <NumberField
                  label={t.height}
                  unit="m"
                  quantity="length"
                  value={post.heightM}
                  {...RANGE}
                  onChange={(heightM) => putHeight(i(), heightM)}
                />
              )}
            </For>
          )}
        </Match>
        <Match when={props.hand === 'feet' && stand()}>
          {(now) => (
            <label class="clip-way">
              <input
                type="checkbox"
                checked={now().goesRight}
                onChange={(e) => put({ stand: { ...now(), goesRight: e.currentTarget.checked } })}
              />{' '}
              {t.goesRight}
            </label>
          )}
        </Match>
      </Switch>
      <p class="clip-ways">
        <button type="button" class="main" onClick={() => props.desk.setHand('look')}>
          {t.done}
        </button>
        <button type="button" class="link" onClick={takeAway}>
          {t.takeAway}
        </button>
      </p>
    </div>
  );
}
