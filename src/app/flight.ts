/**
 * What the document flies to. An edit flies the skill at once, and whatever shows it draws in the same frame. A document
 * that cannot be flown keeps the last flight that could, with the fault beside it.
 */
import { type Accessor, createMemo, createSignal, onCleanup } from 'solid-js';
import type { ShapeData, SkillFile } from '../../sim/index.ts';
import { getLanes, type Lane } from '../document/lanes.ts';
import { getSchedule } from '../document/phases.ts';
import { type BlockSpan, findSpan, getSpans } from '../document/spans.ts';
import type { AnchorSeconds } from '../document/times.ts';
import type { FlightCaution, FlightOutcome, FlightResult, Outline } from '../engine/result.ts';
import type { DocumentState } from './document.ts';
import { wordFault } from './say/fault-words.ts';
import type { Flying } from './services.ts';
import { texts } from './words.ts';

interface FlownDocument extends FlightOutcome {
  /** identity of the document that this is the flight of */
  readonly id: number;
}

export interface FlightState {
  readonly outcome: Accessor<FlownDocument>;
  readonly result: Accessor<FlightResult>;
  /** identity of the document that the result is of */
  readonly id: Accessor<number>;
  readonly anchors: Accessor<AnchorSeconds>;
  /** what spans and lanes are of, to be edited by them; undefined while the flight is another document's */
  readonly edited: Accessor<SkillFile | undefined>;
  readonly spans: Accessor<BlockSpan[]>;
  readonly lanes: Accessor<Lane[]>;
  /** a body outside the data, joints beyond their limits, the take-off, and what passes through the body; the last rest while a hand is at work */
  readonly cautions: Accessor<readonly FlightCaution[]>;
  /** the result before the gesture under way, once it has changed something */
  readonly before: Accessor<Outline | undefined>;
  /** the flight before it: while the hand is at work, and while `keepEarlier` asks for it */
  readonly earlier: Accessor<FlightResult | undefined>;
  /** until the owner that asks is cleaned up */
  keepEarlier(result: FlightResult, asksAt?: number): void;
  /** s at which the hand asks for more than the joints can, and the limb lags */
  readonly asksAt: Accessor<number | undefined>;
  /** a flight of what the document becomes next, flown in full by who looks at it first */
  expect(result: FlightResult): void;
  /** a gesture begins: its flight is compared with the one now */
  begin(): void;
  /** grows when a flight that was waited for can be flown: what comes before it is known */
  readonly released: Accessor<number>;
  /** asks again for what was lost */
  retry(): void;
  /** the flight that is flown beside the page is not wanted */
  cancel(): void;
}

interface FlightHost {
  readonly flying: Pick<Flying, 'fly' | 'overlaps' | 'onRelease' | 'retryReleases' | 'cancel'>;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly document: Pick<DocumentState, 'file' | 'id' | 'isHeld' | 'history'>;
  /** flights that were flown to see whether a document can be opened */
  readonly checked: Checked;
  /** flown for the picture where the first document waits for what comes before its flight, or lost it */
  readonly standIn?: SkillFile;
}

/** Identity of no document. */
const NO_DOCUMENT = -1;

/** Flights of documents that were flown before they were opened, so that none is flown twice. */
export interface Checked {
  /** throws when it cannot be flown */
  check(file: SkillFile): void;
  put(result: FlightResult): void;
  take(file: SkillFile): FlightResult | undefined;
}

export function makeChecked(fly: (file: SkillFile) => FlightResult): Checked {
  let last: FlightResult | undefined;
  return {
    check: (file) => {
      last = fly(file);
    },
    put: (result) => {
      last = result;
    },
    take: (file) => {
      const found = last?.file === file ? last : undefined;
      last = undefined;
      return found;
    },
  };
}

export function createFlight({ flying, shapes, document: doc, checked, standIn }: FlightHost): FlightState {
  const [released, setReleased] = createSignal(0);
  /** documents of the drag under way whose release was not known yet, and the last that came */
  let trail = new WeakSet<SkillFile>();
  let reached: SkillFile | undefined;
  flying.onRelease((file) => {
    if (trail.has(file)) reached = file;
    setReleased(released() + 1);
  });
  /** A hand that drags a swing is ahead of its releases: the flight follows as they come. */
  const follow = (last: FlownDocument, id: number, inDrag: boolean): Pick<FlownDocument, 'result' | 'id'> => {
    const file = reached;
    reached = undefined;
    if (file && inDrag)
      try {
        return { result: flying.fly(file, last.result), id };
      } catch {
        // it is on the way alone; the fault of the place that the hand comes to is said
      }
    return { result: last.result, id: last.id };
  };
  /** Before the first flight there is none to keep. */
  const takeStandIn = (error: unknown): FlownDocument => {
    if (!standIn || !isAwaited(error)) throw error;
    return { result: flying.fly(standIn), id: NO_DOCUMENT };
  };
  let flownAt = 0;
  const outcome = createMemo<FlownDocument>((before) => {
    let last = before;
    const file = doc.file();
    const id = doc.id();
    const isSame = released() === flownAt;
    flownAt = released();
    const inDrag = doc.isHeld();
    if (last && isSame && last.result.file === file && (inDrag || !last.result.draft))
      return { result: last.result, id };
    try {
      return { result: checked.take(file) ?? flying.fly(file, inDrag ? last?.result : undefined), id };
    } catch (error) {
      last ??= takeStandIn(error);
      if (isPending(error)) {
        if (inDrag) trail.add(file);
        return { ...follow(last, id, inDrag), isWaiting: true, ...(isBeside(error) ? { isBeside: true } : {}) };
      }
      return { result: last.result, fault: { message: wordFault(error), canRetry: isLost(error) }, id: last.id };
    }
  });
  const result = createMemo(() => outcome().result);
  const anchors = createMemo<AnchorSeconds>(() => ({
    apex: result().outline.apex,
    touchdown: result().flight.duration,
  }));
  // the document that was flown, so that picture and edges never disagree; but places in it are those of the document
  const edited = createMemo(() => {
    if (outcome().id !== doc.id()) return undefined;
    const { file } = result();
    return hasSamePlaces(file, doc.file()) ? file : doc.file();
  });
  const spans = createMemo(() => {
    const file = edited();
    return file ? getSpans(file, shapes, anchors()) : [];
  });
  const lanes = createMemo(() => {
    const file = edited();
    return file ? getLanes(file, result().flight.body, result().frames, spans(), anchors()) : [];
  });

  let atBegin: FlightResult | undefined;
  const inGesture = createMemo<FlightResult | undefined>((last) => {
    const { mark, doc: now } = doc.history();
    if (mark === undefined) {
      atBegin = undefined;
      return undefined;
    }
    return now !== mark ? atBegin : last;
  });
  const before = createMemo(() => inGesture()?.outline);
  const [kept, setKept] = createSignal<{ readonly earlier: FlightResult; readonly asksAt?: number }>();
  const cautions = createMemo<readonly FlightCaution[]>(() => [
    ...bodyCautions(result()),
    ...result().cautions,
    ...result().takeoffCautions,
    ...(before() ? [] : flying.overlaps(result())),
  ]);

  return {
    outcome,
    result,
    id: createMemo(() => outcome().id),
    anchors,
    edited,
    spans,
    lanes,
    cautions,
    before,
    earlier: () => inGesture() ?? kept()?.earlier,
    asksAt: () => kept()?.asksAt,
    keepEarlier: (earlier, asksAt) => {
      const what = { earlier, asksAt };
      setKept(what);
      onCleanup(() => setKept((now) => (now === what ? undefined : now)));
    },
    expect: checked.put,
    begin: () => {
      trail = new WeakSet();
      reached = undefined;
      atBegin = result();
    },
    released,
    cancel: () => flying.cancel(doc.file()),
    retry: () => {
      flying.retryReleases();
      setReleased(released() + 1);
    },
  };
}

const bodyCautions = ({ flight: { body } }: FlightResult): FlightCaution[] =>
  [body.outside, body.seam].flatMap((said) => (said ? [{ kind: 'body' as const, t: 0, ...said }] : []));

const isNamed = (error: unknown, ...names: readonly string[]): boolean =>
  error instanceof Error && names.includes(error.name);

/** The flight is being flown beside the page. */
export const isBeside = (error: unknown): boolean => isNamed(error, 'FlightPendingError');

/** What comes before the flight, or the flight itself, is being computed. */
export const isPending = (error: unknown): boolean => isBeside(error) || isNamed(error, 'ReleasePendingError');

/** It was lost with the worker that computed it, or stopped. */
const isLost = (error: unknown): boolean => isNamed(error, 'ReleaseLostError', 'FlightStoppedError');

/** It may come yet: by itself, or when it is asked for again. */
export const isAwaited = (error: unknown): boolean => isPending(error) || isLost(error);

/** The same shapes and keys in the same order: a place in one is that place in the other. */
function hasSamePlaces(one: SkillFile, other: SkillFile): boolean {
  if (one === other) return true;
  const [{ blocks: a = [], keys: k = [] }, { blocks: b = [], keys: l = [] }] = [getSchedule(one), getSchedule(other)];
  return (
    a.length === b.length &&
    k.length === l.length &&
    a.every(({ shape }, i) => shape === b[i].shape) &&
    k.every(({ angle }, i) => angle === l[i].angle)
  );
}

/** The shape at t in words: "wrapped", or "moving to wrapped". */
export function nameShape(spans: readonly BlockSpan[], t: number): string {
  const found = findSpan(spans, t);
  if (!found) return '';
  return found.held ? found.span.title : texts.cut.inMove(found.span.word);
}

/** The shape held at t, or moved into, by its short word: "wrapped". */
export const wordShape = (spans: readonly BlockSpan[], t: number): string => findSpan(spans, t)?.span.word ?? '';
