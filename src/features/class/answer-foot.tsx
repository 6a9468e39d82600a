/** The foot of a student's sheet: what to do with it, its keys, and the caution. */
import { createSignal, For, Show } from 'solid-js';
import { usePage } from '../../app/page.ts';
import { texts } from '../../app/words.ts';
import { Ask } from './answer-row.tsx';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import type { ClassRoomState } from './class-state.ts';
import { linkOf, saveSheet } from './hand-in.ts';

export interface FootActions {
  handIn(): void;
  copyLink(): void;
  print(): void;
}

export function AnswerFoot(props: {
  room: ClassRoomState;
  work: AnswerWork;
  focusName: () => void;
  print: () => void;
  showSheet: () => void;
  ref: (actions: FootActions) => void;
}) {
  const { doc } = usePage();
  const [said, setSaid] = createSignal('');
  const [link, setLink] = createSignal<string>();
  const [isHanded, setHanded] = createSignal(false);
  const open = (): number => props.work.worksheet().questions.length - props.work.lockedCount();
  const isNamed = (): boolean => {
    if (props.work.name().trim() !== '') return true;
    setSaid(t.needsName);
    props.focusName();
    return false;
  };
  const stillOpen = (): string => (open() > 0 ? ` ${t.stillOpen(open())}` : '');
  const handIn = (): void => {
    if (!isNamed()) return;
    const file = saveSheet(props.room.classing, props.work.handedIn());
    setHanded(true);
    setSaid(`${t.handedIn(file)}${stillOpen()}`);
  };
  const copyLink = async (): Promise<void> => {
    if (!isNamed()) return;
    setLink(undefined);
    try {
      const made = linkOf(props.room.classing, props.work.handedIn());
      try {
        await navigator.clipboard.writeText(made.link);
        setSaid(`${made.isBare ? t.linkBare : t.linkCopied}${stillOpen()}`);
      } catch {
        setLink(made.link);
        setSaid(t.linkNotCopied);
      }
      setHanded(true);
    } catch (error) {
      setSaid(error instanceof Error ? error.message : String(error));
    }
  };
  const toBench = (): void => {
    const file = props.work.worksheet().skill;
    doc.openSoon(file, t.benchStep(file.title));
  };
  const forget = async (): Promise<void> => {
    setSaid((await props.work.forget()) ? t.removed : t.notRemoved);
  };
  const asked = () => {
    const question = props.work.question();
    return question?.index === 'all' ? question : undefined;
  };
  // the state of a foot lives as long as it
  // eslint-disable-next-line solid/reactivity
  props.ref({ handIn, copyLink: () => void copyLink(), print: () => props.print() });
  return (
    <footer class="pupil-foot">
      <Show when={asked()}>
        {(question) => <Ask messages={[t.sureAll, ...question().messages]} work={props.work} />}
      </Show>
      <Show when={said()}>
        <p class="pupil-foot-said" role="status">
          {said()}{' '}
          <Show when={isHanded() && props.work.isKept() !== undefined}>
            <button type="button" class="link" onClick={() => void forget()}>
              {t.remove}
            </button>
          </Show>
        </p>
      </Show>
      <Show when={link()}>
        {(text) => (
          <label class="pupil-link">
            {t.link}
            <textarea readonly rows={3} value={text()} onFocus={(e) => e.currentTarget.select()} />
          </label>
        )}
      </Show>
      <div class="pupil-foot-line">
        <p class="pupil-keys quiet" aria-hidden="true">
          <For each={t.keys}>{(key) => <span>{key}</span>}</For>
        </p>
        <button type="button" class="plain sheet-behind" aria-keyshortcuts="S" onClick={() => props.showSheet()}>
          {props.work.isComplete() ? t.fullSheet : t.sheet}
        </button>
        <Show when={props.work.isComplete()}>
          <button type="button" onClick={toBench}>
            {t.bench}
          </button>
        </Show>
        <Show when={props.work.worksheet().order === 'together' && !props.work.isComplete()}>
          <button
            type="button"
            class="primary"
            disabled={props.work.locking() !== undefined}
            onClick={() => props.work.lockAll()}
          >
            {props.work.locking() === 'all' ? t.reading : t.lockAll}
          </button>
        </Show>
        <button type="button" onClick={() => props.print()}>
          {t.print}
        </button>
        <button type="button" onClick={() => void copyLink()}>
          {t.copyLink}
        </button>
        <button type="button" classList={{ primary: props.work.isComplete() }} onClick={handIn}>
          {t.handIn}
        </button>
      </div>
      <p class="standing">{texts.standingCaution}</p>
    </footer>
  );
}
