/** Film: how a flight is filmed, and what a recording of a body gives. */
import { Match, Show, Switch } from 'solid-js';
import { Portal } from 'solid-js/web';
import { makeLate } from '../../app/late.tsx';
import { loadPart } from '../../app/load-part.ts';
import { useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { ToolTabs } from '../../ui/tabs.tsx';
import { FILM_VIEWS, useFilmState } from './film-state.ts';
import { PlanView } from './plan-view.tsx';
import { RecordingView } from './recording-view.tsx';
import { filmTexts as t } from './words.ts';
import './film.css';

const ClipView = makeLate(
  loadPart(
    () => import('./clip-view.tsx'),
    (m) => m.ClipView,
  ),
);

const ID = 'film';

export function FilmTool(props: ToolProps) {
  const { places } = useShell();
  const film = useFilmState();
  return (
    <div
      class="film"
      classList={{ touch: props.device !== 'bench' }}
      role="tabpanel"
      id={`${ID}-panel`}
      aria-labelledby={`${ID}-${film.view()}`}
      style={{ height: `${props.height}px` }}
    >
      <Show when={places.headline()}>
        {(mount) => (
          <Portal mount={mount()} ref={(el) => el.classList.add('film-views')}>
            <ToolTabs
              id={ID}
              label={t.viewsLabel}
              names={FILM_VIEWS}
              titles={t.views}
              chosen={film.view()}
              choose={film.show}
            />
          </Portal>
        )}
      </Show>
      <Switch>
        <Match when={film.view() === 'plan'}>
          <PlanView {...props} />
        </Match>
        <Match when={film.view() === 'clip'}>
          <ClipView {...props} />
        </Match>
        <Match when={film.view() === 'recording'}>
          <RecordingView {...props} />
        </Match>
      </Switch>
    </div>
  );
}
