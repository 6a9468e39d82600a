/** The room of a class: ways in, a student's sheet, a worksheet that is written, a class as a table. */
import { createEffect, createResource, Match, onCleanup, onMount, Show, Switch } from 'solid-js';
import { usePage } from '../../app/page.ts';
import { texts } from '../../app/words.ts';
import { readClassTab, writeClassTab } from '../../ui/stored.ts';
import { AnswerView } from './answer-view.tsx';
import { type ClassRoomState, useClassRoom } from './class-state.ts';
import { StartView } from './start-view.tsx';
import { TableView } from './table-view.tsx';
import { WriteView } from './write-view.tsx';
import './class.css';

export function ClassRoom() {
  const { services } = usePage();
  const make = useClassRoom();
  const [classing] = createResource(() => services.load.classing());
  const resume = readClassTab() ?? '';
  onMount(() => writeClassTab(resume));
  onCleanup(() => writeClassTab(null));
  return <Show when={classing()}>{(loaded) => <Views room={make(loaded(), resume)} />}</Show>;
}

function Views(props: { room: ClassRoomState }) {
  const { shell } = usePage();
  // a reload of this tab comes back to the sheet that is answered
  createEffect(() => writeClassTab((props.room.view() === 'answer' && props.room.work()?.id()) || ''));
  createEffect(() => {
    if (shell.classDoor.given().length > 0) props.room.receive(shell.classDoor.take());
  });
  return (
    <>
      <Show when={props.room.fault()}>
        {(fault) => (
          <div class="file-fault" role="alert">
            <p>
              <b>{texts.files.failed(fault().name)}</b> {fault().reason}{' '}
              <span class="quiet">{texts.files.nothingLost}</span>
            </p>
            <button type="button" onClick={() => props.room.setFault(undefined)}>
              {texts.files.dismiss}
            </button>
          </div>
        )}
      </Show>
      <Switch fallback={<StartView room={props.room} />}>
        <Match when={props.room.view() === 'answer'}>
          <AnswerView room={props.room} />
        </Match>
        <Match when={props.room.view() === 'write'}>
          <WriteView room={props.room} />
        </Match>
        <Match when={props.room.view() === 'table'}>
          <TableView room={props.room} />
        </Match>
      </Switch>
    </>
  );
}
