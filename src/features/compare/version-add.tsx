/** Ways to a version: as it is now, and a list of skills, athletes and take-offs. */
import { createSignal, createUniqueId, For, Show } from 'solid-js';
import { useServices } from '../../app/page.ts';
import type { PresetAthlete, PresetSkill } from '../../app/services.ts';
import { useShelf } from '../../app/shelf.ts';
import { Icon } from '../../ui/icon.tsx';
import type { CompareState } from './compare-state.ts';
import { compareTexts as c } from './words.ts';

export function VersionAdd(props: { state: CompareState }) {
  const services = useServices();
  const id = createUniqueId();
  const [open, setOpen] = createSignal(false);
  let root!: HTMLDivElement;
  let opener!: HTMLButtonElement;
  const shelf = useShelf();
  // the user's own first
  const skills = (): PresetSkill[] => [
    ...shelf.skills().map(({ id: own, value }) => ({ id: own, file: value })),
    ...services.presets.skills,
  ];
  const athletes = (): PresetAthlete[] => [
    ...shelf.athletes().map(({ id: own, value }) => ({ id: own, athlete: value })),
    ...services.presets.athletes,
  ];
  const choose = (add: () => void): void => {
    setOpen(false);
    add();
    opener.focus();
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key !== 'Escape' || !open()) return;
    e.preventDefault();
    e.stopPropagation();
    setOpen(false);
    opener.focus();
  };
  const onFocusOut = (e: FocusEvent): void => {
    if (e.relatedTarget instanceof Node && !root.contains(e.relatedTarget)) setOpen(false);
  };
  const group = <T,>(title: string, list: readonly T[], name: (one: T) => string, add: (one: T) => void) => (
    <section>
      <h3>{title}</h3>
      <ul>
        <For each={list}>
          {(one) => (
            <li>
              <button type="button" class="plain" onClick={() => choose(() => add(one))}>
                {name(one)}
              </button>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes the list from wherever the focus is in it
    <div class="version-add" ref={root} onKeyDown={onKeyDown} onFocusOut={onFocusOut}>
      <button type="button" onClick={() => props.state.keep()}>
        {c.keep}
      </button>
      <button
        ref={opener}
        type="button"
        class="opener"
        aria-expanded={open()}
        aria-controls={id}
        onClick={() => {
          setOpen(!open());
          if (open()) document.getElementById(id)?.scrollIntoView({ block: 'nearest' });
        }}
      >
        {c.addTitle} <Icon name="down" size={14} />
      </button>
      <Show when={open()}>
        <section id={id} class="version-list" aria-label={c.addTitle}>
          {group(
            c.skills,
            skills(),
            (s) => s.file.title,
            (s) => props.state.addSkill(s),
          )}
          {group(
            c.athletes,
            athletes(),
            (a) => a.athlete.name,
            (a) => props.state.addAthlete(a),
          )}
          {group(
            c.takeoffs,
            skills(),
            (s) => s.file.title,
            (s) => props.state.addTakeoff(s),
          )}
        </section>
      </Show>
    </div>
  );
}
