/** Which limb is meant: under the mouse, touched, focused, or chosen among two that lie near each other. */
import { type Accessor, batch, createMemo, createSignal, onCleanup } from 'solid-js';
import { limbsUnder } from '../../app/limb-under.ts';
import type { HeldLimb, LimbName } from '../../pictures/stage-input.ts';
import type { FigureViews, HeldViewName } from './figure-views.ts';
import { useFirstLift } from './first-lift.ts';
import { useHand } from './hand.ts';
import type { ScreenPlace } from './limb-turn.ts';

/** Where a limb is meant, and in which of the views. */
interface Meant {
  readonly view: HeldViewName;
  readonly limbs: readonly HeldLimb[];
  readonly x: number;
  readonly y: number;
}

/** ms that names stay when the mouse has left the limbs, on its way to one of them */
const NAMES_STAY = 700;

const twins = (limb: LimbName): readonly LimbName[] =>
  limb === 'head' ? [limb] : [`${limb.slice(0, -1)}L` as LimbName, `${limb.slice(0, -1)}R` as LimbName];

/** `root` and `figure` are there when the first pointer comes. */
export function useMeantLimb(root: Accessor<HTMLElement>, figure: Accessor<FigureViews>) {
  const hand = useHand();
  const firstLift = useFirstLift();
  const [hover, setHover] = createSignal<Meant>();
  const [choice, setChoice] = createSignal<Meant>();
  const [focused, setFocused] = createSignal<{ view: HeldViewName; id: LimbName }>();
  /** chosen among two that lie near each other: a press there means this one */
  const [picked, setPicked] = createSignal<LimbName>();
  const lifted = createMemo((): readonly LimbName[] => {
    const work = hand.shown();
    if (work) return work.both ? twins(work.limb as LimbName) : [work.limb as LimbName];
    const two = choice() ?? hover();
    if (two) return two.limbs.map(({ id }) => id);
    const at = focused()?.id ?? picked();
    if (at) return [at];
    return firstLift.up() ? ['armL'] : [];
  });
  const find = (x: number, y: number, isTouch: boolean): Meant | undefined => {
    const view =
      figure()
        .views()
        .find((name) => x >= figure().leftOf(name) && x < figure().leftOf(name) + figure().wide()) ??
      figure().views()[0];
    const picture = figure().pictures()[view];
    if (!picture) return undefined;
    const under = limbsUnder(picture.limbs, x - figure().leftOf(view), y, isTouch);
    const own = under.filter(({ id }) => id === picked());
    return under.length > 0 ? { view, limbs: own.length > 0 ? own : under, x, y } : undefined;
  };
  const placeOf = (e: PointerEvent): ScreenPlace => {
    const box = root().getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const isOnControl = (e: Event): boolean => (e.target as Element).closest('button, label, .pose-plates') !== null;
  let leaving: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(leaving));
  const leave = (): void => {
    clearTimeout(leaving);
    leaving = setTimeout(() => setHover(undefined), (hover()?.limbs.length ?? 0) > 1 ? NAMES_STAY : 0);
  };
  const onMove = (e: PointerEvent): void => {
    if (e.pointerType !== 'mouse' || e.buttons !== 0) return;
    if (isOnControl(e)) {
      clearTimeout(leaving);
      return;
    }
    const found = find(...placeOf(e), false);
    if (!found) {
      if (hover()) leave();
      return;
    }
    clearTimeout(leaving);
    const last = hover();
    const isSame =
      last?.view === found.view && last.limbs.map(({ id }) => id).join() === found.limbs.map(({ id }) => id).join();
    if (!isSame) setHover(found);
  };
  const targetOf = (view: HeldViewName, id: string): HTMLElement | null =>
    root().querySelector<HTMLElement>(`[data-limb="${view} ${id}"]`);
  const choose = (view: HeldViewName, id: LimbName): void => {
    batch(() => {
      setChoice(undefined);
      setHover(undefined);
      setPicked(id);
    });
    targetOf(view, id)?.focus({ preventScroll: true });
  };
  const letGo = (): void => {
    batch(() => {
      setChoice(undefined);
      setHover(undefined);
      setPicked(undefined);
    });
  };
  /** whose names are shown; as a memo, where the figure is there */
  const named = () => {
    if (hand.shown()) return undefined;
    const two = choice() ?? hover();
    if (two) return { ...two, isChoice: choice() !== undefined };
    const at = focused();
    const view = at?.view ?? figure().views()[0];
    const id = at?.id ?? picked() ?? (firstLift.named() ? 'armL' : undefined);
    const limb = id && figure().limbIn(view, id);
    if (!limb) return undefined;
    const [, [x, y]] = limb.line;
    return { view, limbs: [limb], x: x + figure().leftOf(view), y, isChoice: false };
  };
  return {
    hover,
    setHover,
    choice,
    setChoice,
    focused,
    setFocused,
    picked,
    setPicked,
    lifted,
    named,
    find,
    placeOf,
    isOnControl,
    leave,
    onMove,
    targetOf,
    choose,
    letGo,
  };
}
export type MeantLimb = ReturnType<typeof useMeantLimb>;
