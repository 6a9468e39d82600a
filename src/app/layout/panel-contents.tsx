/** What the panels hold. Loaded at the first press or key, before a panel can be asked for: the page starts light. */
import { For, Match, Switch } from 'solid-js';
import { printKey } from '../../commands/keys.ts';
import { commands } from '../../commands/table.ts';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { ShapeList } from '../../features/ruler/shape-list.tsx';
import { SkillPicker } from '../../features/shelf/skill-picker.tsx';
import { AthletePicker } from '../../features/shelf/skill-picker-athletes.tsx';
import { AthleteForm } from '../../features/takeoff/athlete-form.tsx';
import { FieldGroup, GivenValues, HighestPoint } from '../../features/takeoff/fields.tsx';
import { takeoffTexts } from '../../features/takeoff/words.ts';
import { SideSign } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { useActions } from '../actions.ts';
import { useFlight, useShell } from '../page.ts';
import { wordJoint } from '../say/body-words.ts';
import type { PanelName } from '../shell.ts';
import { texts } from '../words.ts';
import { AboutResult } from './about-result.tsx';
import { Menu } from './menu.tsx';
import { StartPanel } from './start-panel.tsx';

export function PanelContent(props: { name: PanelName; lanes: LaneList; close: () => void }) {
  return (
    <Switch>
      <Match when={props.name === 'skills'}>
        <SkillPicker close={props.close} />
      </Match>
      <Match when={props.name === 'values'}>
        <AllValues />
      </Match>
      <Match when={props.name === 'athlete'}>
        <div class="all-values">
          <AthleteForm />
          <AthletePicker />
        </div>
      </Match>
      <Match when={props.name === 'shapes'}>
        <ShapeList />
      </Match>
      <Match when={props.name === 'joints'}>
        <JointChoice lanes={props.lanes} close={props.close} />
      </Match>
      <Match when={props.name === 'help'}>
        <KeyList />
      </Match>
      <Match when={props.name === 'menu'}>
        <Menu />
      </Match>
      <Match when={props.name === 'about'}>
        <AboutResult close={props.close} />
      </Match>
      <Match when={props.name === 'start'}>
        <StartPanel close={props.close} />
      </Match>
    </Switch>
  );
}

function AllValues() {
  return (
    <div class="all-values">
      <h3>{takeoffTexts.takeoff}</h3>
      <FieldGroup group="takeoff" main={false} />
      <GivenValues main={false} />
      <HighestPoint />
      <h3>{takeoffTexts.athlete}</h3>
      <AthleteForm />
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
  const groups = ['time', 'edit', 'tool', 'file', 'view', 'learn'] as const;
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
