/** The card to the gym floor: its cues in fields, what is on it, printed or kept once they were read. */

import { createEffect, createMemo, For, onCleanup, Show } from 'solid-js';
import { clearPages, printPages, svgBlob } from '../../app/print-pages.ts';
import { wordNames } from '../../app/say/code-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import type { PaperPage } from '../../paper/page-svg.ts';
import type { Paper } from '../../paper/paper.ts';
import { wordRoom } from './card-room.ts';
import { type CardState, makeCardState } from './card-state.ts';
import { cardTexts as t } from './card-words.ts';
import { type CodePicture, hasCode } from './code-picture.ts';
import { useLater } from './later.ts';
import { savePng, saveSvg } from './paper-out.ts';
import { dateOf, nameOf, titleOf, useTypeface } from './paper-page.ts';
import type { HandState, HandWay, WayProps } from './way.ts';
import { cautionToGo } from './without-mass.ts';
import { handTexts } from './words.ts';

const ID = 'card';
const stateOf = (hand: HandState): CardState => hand.page.keepState(makeCardState);

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="1.5" y="0.5" width="57" height="39" />
      <path
        class="thumb-ink"
        d="M6 5 H34 M6 27 H24 M6 31 H20 M28 27 H38 M12 11 V21 M9 14 H15 M26 12 L32 20 M40 12 L36 20 M50 11 V21 M47 14 H53"
      />
      <path d="M4 22.5 H56" stroke="currentColor" stroke-width="3" />
    </svg>
  );
}

/** The link as points; or why there are none; undefined while they are made. */
function useCode(hand: HandState): () => { readonly code?: CodePicture; readonly why?: string } | undefined {
  return () => {
    if (hand.base() === undefined) return { why: handTexts.code.noAddress };
    const link = hand.codeLink()?.link;
    if (link === undefined || !hasCode(link)) return { why: handTexts.code.long };
    const [code, paper] = [hand.code.made(), stateOf(hand).paper()];
    if (!code || !paper) return undefined;
    return code.size <= paper.mostPoints() ? { code } : { why: handTexts.code.long };
  };
}

function useCard(hand: HandState) {
  const { page } = hand;
  const card = stateOf(hand);
  const code = createMemo(useCode(hand));
  const whole = wholeStateOf(page);
  const title = (): string => titleOf(hand);
  const who = (): string | undefined => nameOf(hand);
  const typeface = useTypeface(card.paper, () =>
    [title(), who() ?? '', ...card.cues().map(({ text }) => text)].join(' '),
  );
  const room = createMemo(() => {
    const spans = page.flight.spans();
    return wordRoom(card.room() ?? [], (block) => spans[block]?.word ?? '');
  });
  const paged = useLater<PaperPage>(() => {
    const [paper, flight, figures, face] = [card.paper(), card.flight(), card.figures(), typeface()];
    const [handed, coded] = [hand.handed()?.file, code()];
    if (!paper || !flight || !figures || !face || !handed || !coded) return undefined;
    const result = page.flight.result();
    const [caution] = whole.cautions();
    const said = result.notCompared ?? caution;
    const drawn = coded.code;
    const name = who();
    const input = {
      flight,
      instants: card.instants(),
      figures,
      name: title(),
      called: wordNames(result.names),
      result: paper.resultLine(whole.verdict(), PAGE_NUMBERS),
      cues: card.cues(),
      ...(said
        ? { caution: 'kind' in said ? cautionToGo(said, hand.along().mass) : `${said.title} ${said.detail}` }
        : {}),
      room: room(),
      standing: texts.standingCaution,
      ...(drawn ? { code: drawn } : {}),
      ...(name ? { who: name } : {}),
      foot: `${paper.cardFoot} ${t.version(dateOf())}`,
      origin: paper.originMark(page.flight.result(), handed),
      product: texts.product,
      ...face,
    };
    return () => paper.card(input);
  });
  const fits = createMemo(() => card.cues().map(({ text }) => card.paper()?.cueHasRoom(text) === true));
  return { card, paged, why: () => code()?.why, room, fits, title };
}

function View(props: WayProps) {
  // the state of the tool is the same for as long as it is open
  // eslint-disable-next-line solid/reactivity
  const { hand } = props;
  const { card, paged, why, room, fits, title } = useCard(hand);
  const src = createMemo(() => {
    const page = paged.shown();
    if (!page) return undefined;
    const address = URL.createObjectURL(svgBlob(page));
    onCleanup(() => URL.revokeObjectURL(address));
    return address;
  });
  onCleanup(clearPages);
  const isReady = (): boolean => paged.made() !== undefined && card.isRead() && fits().every(Boolean);
  const doWith = async (work: (page: PaperPage, paper: Paper) => Promise<boolean>): Promise<void> => {
    const [page, paper] = [paged.made(), card.paper()];
    if (!page || !paper || !isReady()) return;
    hand.fail(ID, undefined);
    try {
      const isKept = await work(page, paper);
      if (isKept) hand.say(ID, t.saved);
    } catch {
      hand.fail(ID, t.notDrawn);
    }
  };
  createEffect(() => {
    ready.set(hand, isReady() ? () => void doWith((page) => printPages([page]).then(() => false)) : undefined);
  });
  const compute = async (): Promise<void> => {
    const asking = await hand.page.services.load.asking();
    const skill = asking.open(hand.page.flight.result(), hand.page.doc.leg() > 0);
    const call = asking.room(skill, ({ done, all }) =>
      hand.work(ID, { text: t.room.working(done, all), share: done / all, cancel: () => call.cancel() }),
    );
    hand.work(ID, { text: t.room.working(0, 1), share: 0, cancel: () => call.cancel() });
    try {
      card.setRoom(await call.done);
    } catch {
      // it was cancelled: nothing of it is on the card
    } finally {
      hand.work(ID, undefined);
    }
  };
  return (
    <div class="paper-way">
      <Show when={src()} fallback={<div class="paper-preview" style={{ 'aspect-ratio': '210 / 148' }} />}>
        {(address) => (
          <img class="paper-preview" src={address()} alt={t.preview} style={{ 'aspect-ratio': '210 / 148' }} />
        )}
      </Show>
      <Show when={card.cues().length > 0} fallback={<p class="quiet">{t.none}</p>}>
        <p class="quiet">{t.offered}</p>
        <For each={card.cues().map((_, i) => i)}>
          {(i) => (
            <label class="paper-cue">
              <span>{t.cue(i + 1, card.cues()[i]?.from.toFixed(2) ?? '', card.cues()[i]?.to.toFixed(2) ?? '')}</span>
              <input
                value={card.cues()[i]?.text ?? ''}
                maxLength={80}
                aria-invalid={!fits()[i]}
                onInput={(e) => card.setCue(i, e.currentTarget.value)}
              />
              <Show when={!fits()[i]}>
                <small role="alert">{t.long}</small>
              </Show>
            </label>
          )}
        </For>
      </Show>
      <div class="paper-buttons">
        <Show
          when={!card.isRead()}
          fallback={
            <>
              <button type="button" class="primary" disabled={!isReady()} onClick={() => ready.get(hand)?.()}>
                {t.print}
              </button>
              <button
                type="button"
                disabled={!isReady()}
                onClick={() => void doWith((page) => Promise.resolve(saveSvg(title(), ID, page)).then(() => true))}
              >
                {t.svg}
              </button>
              <button
                type="button"
                disabled={!isReady()}
                onClick={() => void doWith((page, paper) => savePng(title(), ID, page, paper).then(() => true))}
              >
                {t.png}
              </button>
            </>
          }
        >
          <button type="button" class="primary" disabled={!fits().every(Boolean)} onClick={() => card.read()}>
            {t.right}
          </button>
        </Show>
      </div>
      <p class="quiet">
        {card.room() === undefined ? t.room.left : room().length > 0 ? t.room.done : t.room.outside}{' '}
        <Show when={card.room() === undefined && !hand.workOf(ID)}>
          <button type="button" class="link" onClick={() => void compute()}>
            {t.room.compute}
          </button>
        </Show>
      </p>
      <Show when={why()}>{(text) => <p class="quiet">{text()}</p>}</Show>
    </div>
  );
}

/** What the row's verb does, of the tool that is open. */
const ready = new WeakMap<HandState, (() => void) | undefined>();

export const cardWay: HandWay = {
  id: ID,
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: () => [t.hint, t.move],
  brief: () => t.brief,
  time: (hand) => {
    const card = stateOf(hand);
    const instants = card.instants();
    if (instants.length === 0) return undefined;
    return {
      kind: 'pegs',
      times: instants.map((one) => one.t),
      names: instants.map((one) => one.word),
      move: (index, at) => card.move(index, at),
    };
  },
  View,
  run: (hand, wasPicked) => {
    const print = ready.get(hand);
    if (print) print();
    else if (wasPicked && !stateOf(hand).isRead()) hand.fail(ID, t.first);
  },
};
