/** The panels one tap away: skills, all values, joints, keys, menu. */

import { createResource, For, type JSX, Match, Show, Switch } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { printKey } from '../../commands/keys.ts';
import { commands } from '../../commands/table.ts';
import { commandTexts } from '../../commands/words.ts';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { printTexts } from '../../features/print/words.ts';
import { ShapeList } from '../../features/ruler/shape-list.tsx';
import { SkillPicker } from '../../features/shelf/skill-picker.tsx';
import { AthletePicker } from '../../features/shelf/skill-picker-athletes.tsx';
import { BodyNotes, FieldGroup, GivenValues } from '../../features/takeoff/fields.tsx';
import { takeoffTexts } from '../../features/takeoff/words.ts';
import { Choice } from '../../ui/choice.tsx';
import { SideSign } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { Sheet } from '../../ui/sheet.tsx';
import type { Theme } from '../../ui/theme.ts';
import { UnitChoice } from '../../ui/units-choice.tsx';
import { useActions } from '../actions.ts';
import { FailedLine } from '../failed-line.tsx';
import { FileButtons } from '../file-buttons.tsx';
import { loadPart } from '../load-part.ts';
import { NoticeLine } from '../notice-line.tsx';
import { useFlight, usePage, useShell } from '../page.ts';
import { wordJoint } from '../say/body-words.ts';
import type { PanelName } from '../shell.ts';
import { texts } from '../words.ts';
import { UndoRedo } from './bar.tsx';
import { CommandList } from './command-list.tsx';
import { ToolBar } from './tools/tool-bar.tsx';

/** Loaded when it is asked for: the page starts light. */
const loadPrintSheet = loadPart(
  () => import('../../features/print/print-sheet.tsx'),
  (m) => m.PrintSheet,
);

export function Sheets(props: { lanes: LaneList }) {
  const shell = useShell();
  const close = (): void => shell.openPanel(undefined);
  const panel = (name: PanelName, title: string, content: () => JSX.Element): JSX.Element => (
    <Match when={shell.panel() === name}>
      <Sheet title={title} onClose={close}>
        {content()}
      </Sheet>
    </Match>
  );
  return (
    <Switch>
      {panel('skills', texts.picker.title, () => (
        <SkillPicker close={close} />
      ))}
      {panel('values', takeoffTexts.both, () => (
        <AllValues />
      ))}
      {panel('shapes', texts.shapes.listTitle, () => (
        <ShapeList />
      ))}
      {panel('joints', laneTexts.choose, () => (
        <JointChoice lanes={props.lanes} close={close} />
      ))}
      {panel('help', texts.help.title, () => (
        <KeyList />
      ))}
      {panel('commands', commandTexts.findTitle, () => (
        <CommandList close={close} />
      ))}
      {panel('menu', texts.bar.menu, () => (
        <Menu />
      ))}
      <Match when={shell.panel() === 'print'}>
        <PrintPlace onClose={close} />
      </Match>
    </Switch>
  );
}

function PrintPlace(props: { onClose: () => void }) {
  const { services } = usePage();
  const [sheet, { refetch }] = createResource(async () => {
    const [loaded] = await Promise.all([loadPrintSheet(), services.load.print()]);
    return loaded;
  });
  return (
    <Show
      when={sheet.state === 'ready' && sheet()}
      fallback={
        <Show when={sheet.error}>
          <Sheet title={printTexts.title} onClose={props.onClose}>
            <FailedLine again={() => void refetch()}>
              {texts.printFailed} <span class="quiet">{String(sheet.error?.message)}</span>
            </FailedLine>
          </Sheet>
        </Show>
      }
    >
      <Dynamic component={sheet.latest} {...props} />
    </Show>
  );
}

function AllValues() {
  return (
    <div class="all-values">
      <h3>{takeoffTexts.takeoff}</h3>
      <FieldGroup group="takeoff" main={false} />
      <GivenValues main={false} />
      <h3>{takeoffTexts.athlete}</h3>
      <FieldGroup group="athlete" main={false} />
      <BodyNotes />
      <AthletePicker />
    </div>
  );
}

function JointChoice(props: { lanes: LaneList; close: () => void }) {
  const flight = useFlight();
  const isShown = (id: string): boolean => props.lanes.shown().some((lane) => lane.id === id);
  return (
    <ul class="list">
      <For each={flight.lanes()}>
        {(lane) => (
          <li class="joint-row">
            <label>
              <input type="checkbox" checked={isShown(lane.id)} onChange={() => props.lanes.toggle(lane.id)} />
              <SideSign side={lane.sign} />
              <span>{wordJoint(lane.id)}</span>
              <span class="quiet">
                {formatNumber(lane.lowDeg, 0)}°
                {lane.highDeg - lane.lowDeg > 0.5 ? ` – ${formatNumber(lane.highDeg, 0)}°` : ''}
              </span>
            </label>
            <button
              type="button"
              class="plain small"
              onClick={() => {
                if (!isShown(lane.id)) props.lanes.toggle(lane.id);
                props.lanes.setOpen(lane.id);
                props.close();
              }}
            >
              {laneTexts.open}
            </button>
          </li>
        )}
      </For>
    </ul>
  );
}

function KeyList() {
  const actions = useActions();
  const shell = useShell();
  const mac = /Mac|iPhone|iPad/.test(navigator.platform);
  const groups = ['time', 'edit', 'tool', 'file', 'view'] as const;
  return (
    <div class="key-list">
      <For each={groups}>
        {(group) => (
          <>
            <h3>{texts.groups[group]}</h3>
            <ul class="list">
              <For
                each={commands.filter(
                  (one) => one.group === group && (!one.when || group !== 'tool' || one.when(actions)),
                )}
              >
                {(one) => (
                  <li>
                    <button
                      type="button"
                      class="row-button"
                      disabled={one.when ? !one.when(actions) : false}
                      onClick={() => {
                        shell.openPanel(undefined);
                        one.run(actions);
                      }}
                    >
                      <span>{one.title}</span>
                      <span class="keys">
                        <For each={one.keys.slice(0, 1)}>
                          {(name) => <For each={printKey(name, mac)}>{(part) => <kbd>{part}</kbd>}</For>}
                        </For>
                      </span>
                    </button>
                  </li>
                )}
              </For>
            </ul>
          </>
        )}
      </For>
      <p class="quiet">{texts.help.hint}</p>
    </div>
  );
}

function Menu() {
  const shell = useShell();
  const themes: readonly Theme[] = ['system', 'light', 'dark'];
  const go = (panel: PanelName): void => shell.openPanel(panel);
  return (
    <>
      <NoticeLine inSheet />
      <p class="sheet-actions">
        <UndoRedo words />
        <FileButtons />
      </p>
      <ToolBar onOpened={() => shell.openPanel(undefined)} />
      <ul class="list">
        <For
          each={
            [
              ['commands', commandTexts.findTitle],
              ['skills', texts.picker.title],
              ['print', commandTexts.print],
              ['values', takeoffTexts.both],
              ['shapes', texts.shapes.listTitle],
              ['joints', laneTexts.title],
              ['help', texts.help.title],
            ] as const
          }
        >
          {([panel, title]) => (
            <li>
              <button type="button" class="row-button" onClick={() => go(panel)}>
                <b>{title}</b>
              </button>
            </li>
          )}
        </For>
      </ul>
      <Choice
        legend={texts.bar.colours}
        names={themes}
        words={texts.themes}
        chosen={shell.theme()}
        choose={shell.setTheme}
      />
      <UnitChoice />
      <p class="sheet-actions">
        <button type="button" onClick={() => shell.ask('say')}>
          {commandTexts.say}
        </button>
      </p>
      <p class="standing">{texts.comparedWhat}</p>
      <p class="standing">{texts.standingCaution}</p>
    </>
  );
}
