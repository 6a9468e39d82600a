/** Before and after: a skill from the first swing to the last step, on one time axis. */

import { createMemo, createSignal, For, Show } from 'solid-js';
import { beforeOf } from '../../../sim/math/phases.ts';
import { FailedLine } from '../../app/failed-line.tsx';
import { useDocument, useFlight } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { useWholeState, type WholeState } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import { changeSwing } from '../../document/contact-edits.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import type { WholePictureInput, WholeReach } from '../../pictures/whole-input.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, unitSystem } from '../../ui/units.ts';
import { AfterKnobs } from './after-knobs.tsx';
import { BeforeKnobs } from './before-knobs.tsx';
import { LandingSection, Verdict } from './landing-report.tsx';
import { PushSection } from './push-report.tsx';
import { SwingSection, WindowStudy } from './swing-report.tsx';
import { makeWholeAxis, type WholeAxis } from './whole-axis.ts';
import { WholeFloor } from './whole-floor.tsx';
import { WholeRow, wholeRows } from './whole-rows.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const FLOOR = 34;
/** what is shown of a long swing at first, s */
const LAST = 1.9;

export function ContactTool(props: ToolProps) {
  const state = useWholeState();
  const wide = (): boolean => props.device === 'bench';
  const knobs = (): number => (wide() ? 236 : 0);
  const side = (): number => (wide() ? 400 : 0);
  const middle = (): number => props.width - knobs() - side();
  return (
    <div class="contact" classList={{ touch: !wide() }} style={{ height: `${props.height}px` }}>
      <Show when={wide()}>
        <div class="contact-knobs" style={{ width: `${knobs()}px` }}>
          <BeforeKnobs />
          <AfterKnobs />
        </div>
      </Show>
      <div class="contact-middle" style={{ width: `${middle()}px` }}>
        <Show when={state.failed()}>
          <FailedLine class="contact-failed" again={state.again}>
            <b>{t.failed}</b> {state.failed()}
          </FailedLine>
        </Show>
        <Show
          when={state.whole()}
          fallback={<p class="quiet contact-empty">{state.busy() ? t.working : t.nothingYet}</p>}
        >
          {(whole) => <Whole {...props} state={state} whole={whole()} width={middle()} />}
        </Show>
        <Show when={!wide()}>
          <Results {...props} state={state} width={props.width - 32} />
          <BeforeKnobs />
          <AfterKnobs />
        </Show>
      </div>
      <Show when={wide()}>
        <div class="contact-side" style={{ width: `${side()}px` }}>
          <Results {...props} state={state} width={side() - 40} />
        </div>
      </Show>
    </div>
  );
}

function Whole(props: ToolProps & { state: WholeState; whole: WholeResult }) {
  const flight = useFlight();
  const wide = (): boolean => props.device === 'bench';
  const [all, setAll] = createSignal(false);
  const isLong = (): boolean => props.whole.from < -LAST - 0.4;
  const showsAll = (): boolean => all() || props.state.cursor() < -LAST;
  const picture = (): number => (wide() ? Math.max(200, props.height * 0.4) : 190);
  const rows = createMemo(() => wholeRows(props.whole));
  const room = (): number => (wide() ? Math.max(220, props.height - picture() - FLOOR - 40) : 330);
  const share = (): number => rows().reduce((sum, row) => sum + row.share, 0);
  const pxPerM = createMemo(() => {
    let top = 1;
    for (let i = 1; i < props.whole.poses.p_WScm_W.length; i += 3) top = Math.max(top, props.whole.poses.p_WScm_W[i]);
    return (picture() - 8) / (top + 1.05);
  });
  const reaches = createMemo<WholeReach[]>(() =>
    (props.state.pictures()?.reaches(props.whole, flight.result()) ?? []).map(({ t: at, left, right }) => ({
      t: at,
      left: left * pxPerM(),
      right: right * pxPerM(),
    })),
  );
  const axis = createMemo<WholeAxis>(() =>
    makeWholeAxis(isLong() && !showsAll() ? -LAST : props.whole.from, props.whole.to, props.width, reaches()),
  );
  const view = createMemo<WholePictureInput>(() => {
    const a = axis();
    return {
      width: props.width,
      height: picture(),
      pxPerM: pxPerM(),
      floorY: picture(),
      from: a.from,
      units: unitSystem(),
      x: (s) => a.left + (s - a.from) * a.pxPerS,
    };
  });
  const still = createMemo(() => props.state.pictures()?.still(props.whole, flight.result(), view()) ?? '');
  const now = createMemo(
    () => props.state.pictures()?.now(props.whole, flight.result(), view(), props.state.cursor()) ?? '',
  );
  const words = (): string => texts.stage.picture(t.unrolled, '');
  return (
    <>
      <div class="whole-picture" style={{ height: `${picture()}px` }}>
        <svg width={props.width} height={picture()} role="img" aria-label={words()}>
          {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
          <g innerHTML={still()} />
          {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
          <g innerHTML={now()} />
        </svg>
        <p class="stage-name">{t.unrolled}</p>
        <Show when={isLong()}>
          <span class="whole-span">
            {t.shown}:{' '}
            <button type="button" class="small" aria-pressed={!showsAll()} onClick={() => setAll(false)}>
              {t.lastTurn}
            </button>
            <button type="button" class="small" aria-pressed={showsAll()} onClick={() => setAll(true)}>
              {t.all}
            </button>
          </span>
        </Show>
      </div>
      <WholeFloor state={props.state} whole={props.whole} axis={axis()} height={wide() ? FLOOR : 48} />
      <For each={rows()}>
        {(row) => (
          <div class="whole-line">
            <h3>
              {t.rows[row.id][0]} <span class="quiet">{t.rows[row.id][1]}</span>
            </h3>
            <WholeRow
              whole={props.whole}
              state={props.state}
              axis={axis()}
              row={row}
              height={Math.max(48, (room() * row.share) / share() - 20)}
            />
          </div>
        )}
      </For>
    </>
  );
}

function Results(props: ToolProps & { state: WholeState; width: number }) {
  const flight = useFlight();
  const doc = useDocument();
  return (
    <Show when={props.state.whole()}>
      {(whole) => (
        <>
          <Show when={whole().landing}>
            {(landing) => (
              <Verdict landing={landing()} isBed={flight.result().skill.end.surface?.kind === 'trampoline'} />
            )}
          </Show>
          <Now {...props} whole={whole()} />
          <Show when={whole().swing}>
            {(swing) => <SwingSection swing={swing()} whole={whole()} late={props.state.late()} />}
          </Show>
          <Show when={whole().swing && props.state.window()}>
            {(window) => (
              <WindowStudy
                window={window()}
                width={props.width}
                set={(ms) => {
                  const file = doc.file();
                  const before = beforeOf(file);
                  const late = before?.kind === 'swing' ? (before.releaseLateS ?? 0) : 0;
                  doc.edit(
                    changeSwing(file, { releaseLateS: Math.round(late * 1000 + ms) / 1000 }),
                    t.changed(t.knobs.late),
                  );
                }}
              />
            )}
          </Show>
          <Show when={whole().contact}>{(contact) => <PushSection contact={contact()} />}</Show>
          <Show when={landed(whole())}>
            {(report) => <LandingSection report={report()} weight={whole().bodyWeight} />}
          </Show>
          <p class="standing">{texts.standingCaution}</p>
        </>
      )}
    </Show>
  );
}

const landed = ({ landing }: WholeResult) => (landing?.kind === 'landed' ? landing.report : undefined);

/** The values at the cursor, and the side view to scale with the force that acts. */
function Now(props: { state: WholeState; whole: WholeResult; width: number }) {
  const flight = useFlight();
  const SIDE = 190;
  const i = (): number => props.state.row();
  const c = () => props.whole.columns;
  const phase = (): 'swing' | 'contact' | 'flight' | 'landing' =>
    (['swing', 'contact', 'flight', 'landing'] as const)[c().phase[i()]];
  const side = createMemo(
    () =>
      props.state.pictures()?.side(props.whole, flight.result(), props.width * 0.6, SIDE, props.state.cursor(), i()) ??
      '',
  );
  return (
    <section class="whole-now" aria-live="off">
      <div>
        <h3>{t.at(formatNumber(props.state.cursor(), 2))}</h3>
        <p class="quiet">{t.phases[phase()]}</p>
        <p>
          <b class="big">{formatNumber(c().weights[i()], 1)}</b> {t.values.force}
        </p>
        <p class="quiet">{t.values.newtons(formatNumber(Math.hypot(c().fx[i()], c().fy[i()]), 0))}</p>
        <Show when={phase() === 'swing'}>
          <p>
            <b>{say('length', Math.hypot(c().bendX[i()], c().bendY[i()]))}</b> {t.values.bend}
          </p>
        </Show>
        <Show when={phase() === 'landing'}>
          <p>
            <b>{say('length', c().sink[i()])}</b> {t.values.sink}
          </p>
        </Show>
        <Show when={Number.isFinite(c().feltHead[i()])}>
          <p>
            <b>{formatNumber(c().feltHead[i()], 1)}</b> {t.values.felt}
          </p>
        </Show>
        <p>
          <b>{say('speed', c().speed[i()])}</b> {t.values.speed}
        </p>
        <Show when={Number.isFinite(c().turn[i()])}>
          <p class="som">
            <b>{say('rate', Math.abs(c().turn[i()]))}</b> {t.values.about[phase()] ?? t.values.about.flight}
          </p>
        </Show>
        <p>
          <b>{say('momentum', Math.abs(c().h[i()]))}</b> {t.values.h}
        </p>
      </div>
      <figure>
        <svg width={props.width * 0.6} height={SIDE} role="img" aria-label={t.side}>
          {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
          <g innerHTML={side()} />
        </svg>
        <figcaption class="quiet">{t.side}</figcaption>
      </figure>
    </section>
  );
}
