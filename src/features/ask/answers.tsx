/** What was found: each answer with what changes, what it comes to and what it costs; or the nearest and what prevents it. */

import { createMemo, For, Show } from 'solid-js';
import type { JointShare, Solution } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { HELD_WORDS, LIMIT_WORDS, MET_WORDS, wordTouching } from '../../../sim/words/limit-words.ts';
import { Clauses } from '../../app/clauses.tsx';
import { useFlight } from '../../app/page.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { clausesOf } from '../../app/say/sentence-words.ts';
import type { BlockSpan } from '../../document/spans.ts';
import type { ObstacleResult } from '../../engine/ask.ts';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { AskState } from './ask-state.ts';
import { type AskUnit, isNothing, nameInput, sayChange, sayIn } from './ask-words.ts';
import { askTexts as t } from './words.ts';

type Props = { state: AskState };

export function AskButton(props: Props) {
  const ready = (): boolean => props.state.aim().aim !== undefined && props.state.chosen().length > 0;
  return (
    <div class="ask-run">
      <Show
        when={props.state.progress()}
        fallback={
          <button type="button" class="main" disabled={!ready()} title={t.askMeans} onClick={() => props.state.ask()}>
            {t.ask}
          </button>
        }
      >
        {(p) => (
          <>
            <span class="ask-progress" role="status">
              <progress max={p().fits} value={p().fit} aria-label={t.askMeans} />
              {t.asking(String(Math.min(p().fit + 1, p().fits)), String(p().fits), String(p().found))}
            </span>
            <button type="button" onClick={() => props.state.stop()}>
              {t.cancel}
            </button>
          </>
        )}
      </Show>
    </div>
  );
}

export function Answers(props: Props) {
  const flight = useFlight();
  const solutions = (): number => props.state.found()?.answer.solutions.length ?? 0;
  const notHeld = (): number => props.state.found()?.answer.solutions.filter((s) => s.held === false).length ?? 0;
  const isHeldAsked = (): boolean => props.state.found()?.list.some((s) => s.held !== undefined) ?? false;
  const notCompared = () => props.state.found()?.list[0]?.cost.notCompared;
  const head = (): string => {
    const found = props.state.found();
    if (!found) return t.noAnswers;
    const stopped = !found.answer.isComplete;
    if (found.list.length === 0) return t.nothingFlies;
    const isFound = solutions() > 0;
    const touching = wordTouching(found.answer.touching, isFound);
    return [
      isFound ? t.found(solutions() - notHeld(), stopped) : '',
      notHeld() > 0 ? t.notHeldToo(notHeld()) : '',
      touching && `${touching}.`,
      isFound ? '' : t.none(stopped, touching !== ''),
    ]
      .filter(Boolean)
      .join(' ');
  };
  return (
    <section class="ask-answers" aria-label={t.answersTitle}>
      <Show when={props.state.failed()}>
        <p role="alert" class="ask-fault">
          {t.failed(props.state.failed())}
        </p>
      </Show>
      <p class="ask-found" role="status">
        {props.state.progress() ? '' : head()}{' '}
        <Show when={solutions() === 1 && !props.state.stale()}>
          <span class="quiet">{t.onlyOne}</span>
        </Show>
      </p>
      <Show when={props.state.found() && (props.state.stale() || props.state.wantedChanged())}>
        <p class="ask-stale">{props.state.stale() ? t.stale : t.staleWanted}</p>
      </Show>
      <Show when={props.state.found() && (props.state.found()?.list.length ?? 0) > 0}>
        <div class="answer-head" aria-hidden="true">
          <span title={t.costMeans.momentum}>{t.cost.momentum}</span>
          <span title={t.costMeans.speed}>{t.cost.speed}</span>
          <span title={t.costMeans.torque}>{t.cost.torque}</span>
          <span title={t.costMeans.margin}>{t.cost.margin}</span>
        </div>
        <div
          class="answer-list"
          role="radiogroup"
          aria-label={t.answersTitle}
          classList={{ stale: props.state.stale() }}
        >
          <label class="answer" classList={{ picked: props.state.picked() < 0 }}>
            <input
              type="radio"
              name="answer"
              checked={props.state.picked() < 0}
              onChange={() => props.state.pick(-1)}
            />
            <span class="answer-mark">A</span>
            <span class="answer-words">{t.asItIs}</span>
          </label>
          <For each={props.state.found()?.list ?? []}>{(one, i) => <AnswerRow {...props} one={one} index={i()} />}</For>
        </div>
      </Show>
      <Show when={!props.state.stale() && props.state.found()?.obstacles.length}>
        <div class="ask-obstacles">
          <h3>{t.obstacles}</h3>
          <ul>
            <For each={props.state.found()?.obstacles ?? []}>
              {(o) => <li>{wordObstacle(props.state, flight.spans(), o)}</li>}
            </For>
          </ul>
          <p class="quiet">{t.notProof}</p>
        </div>
      </Show>
      <Show when={props.state.drawn()?.fault}>{(fault) => <p class="ask-fault">{t.doesNotFly(fault())}</p>}</Show>
      <Show when={props.state.found()}>
        <p class="quiet ask-caution">
          {t.caution} {isHeldAsked() ? HELD_WORDS : MET_WORDS}{' '}
          {notCompared() ? `${notCompared()?.title} ${notCompared()?.detail}` : LIMIT_WORDS}
        </p>
      </Show>
    </section>
  );
}

/** The way to keep the picked answer. */
export function AnswerActions(props: Props) {
  const can = (): boolean => props.state.drawn()?.result !== undefined;
  return (
    <Show when={props.state.pickedSolution()}>
      <span class="answer-actions">
        <button type="button" disabled={!can()} onClick={() => props.state.keep()}>
          {t.keepAs(props.state.keepLetter())}
        </button>
        <button type="button" class="main" disabled={!can()} onClick={() => props.state.use()}>
          {t.use}
        </button>
      </span>
    </Show>
  );
}

function AnswerRow(props: Props & { one: Solution; index: number }) {
  const flight = useFlight();
  const isAnswer = (): boolean => (props.state.found()?.answer.solutions.length ?? 0) > 0;
  const changes = createMemo(() => {
    const open = props.state.skill();
    if (!open) return '';
    const list = (props.state.found()?.chosen ?? []).flatMap(({ id }, j) => {
      const input = props.state.inputOf(id);
      if (!input) return [];
      const by = props.one.values[j] - input.value;
      if (isNothing(input, by)) return [];
      return [t.changes(nameInput(id, flight.spans(), open.spec), sayChange(input, by))];
    });
    return list.length > 0 ? list.map((one, k) => (k === 0 ? one : soften(one))).join(', ') : t.asNow;
  });
  const cost = () => props.one.cost;
  const joint = (peak: JointShare | undefined, what: string): string => {
    if (!peak) return cost().notCompared?.title ?? what;
    const name = flight.result().flight.body.angles[peak.angle]?.name ?? '';
    return `${what}: ${wordJoint(name)}`;
  };
  return (
    <label class="answer" classList={{ picked: props.state.picked() === props.index }} data-answer={props.index + 1}>
      <input
        type="radio"
        name="answer"
        disabled={props.state.stale()}
        checked={props.state.picked() === props.index}
        onChange={() => props.state.pick(props.index)}
      />
      <span class="answer-mark round">{isAnswer() ? props.index + 1 : '~'}</span>
      <span class="answer-words">
        <span class="spoken">{isAnswer() ? t.answer(String(props.index + 1)) : t.nearest}: </span>
        {changes()}{' '}
        <Show when={isAnswer() && props.one.held === false}>
          <b>{t.notHeld}</b>
        </Show>
        <Clauses clauses={clausesOf(props.one.verdict)} />
      </span>
      <span class="answer-costs">
        <Cost label={t.costMeans.momentum} value={say('momentum', cost().momentum, 1)} bar={0} />
        <Cost
          label={joint(cost().speed, t.costMeans.speed)}
          value={shareWords(cost().speed, cost().notCompared !== undefined)}
          bar={cost().speed?.share ?? 0}
          tick
        />
        <Cost
          label={joint(
            cost().torque,
            typeof cost().torque?.beyond === 'object' ? t.costMeans.fastTorque : t.costMeans.torque,
          )}
          value={shareWords(cost().torque, cost().notCompared !== undefined)}
          bar={cost().torque?.share ?? 0}
          tick
        />
        <Cost
          label={t.costMeans.margin}
          value={cost().margin === undefined ? '–' : `${formatNumber(100 * (cost().margin ?? 0), 0)} %`}
          bar={cost().margin ?? 0}
          dark
        />
      </span>
    </label>
  );
}

/** Of an age that is compared with nothing there is none. */
function shareWords(peak: JointShare | undefined, isYoung: boolean): string {
  if (!peak) return isYoung ? t.notCompared : '–';
  if (!peak.beyond) return `${formatNumber(100 * peak.share, 0)} %`;
  return peak.beyond === 'over' ? t.over3 : say('jointRate', peak.beyond.rate * DEG, 0);
}

/** Bars reach to 1.3 of the limit; the tick is the limit. */
const MOST = 1.3;

function Cost(props: { label: string; value: string; bar: number; tick?: boolean; dark?: boolean }) {
  const width = (): number => Math.min(1, props.bar / (props.tick ? MOST : 1)) * 100;
  return (
    <span class="cost" title={props.label}>
      <span class="spoken">{props.label} </span>
      <b>{props.value}</b>
      <Show when={props.bar > 0}>
        <span class="cost-bar" classList={{ tick: props.tick, dark: props.dark }}>
          <i style={{ width: `${width()}%` }} />
        </span>
      </Show>
    </span>
  );
}

function wordObstacle(state: AskState, spans: readonly BlockSpan[], o: ObstacleResult): string {
  const open = state.skill();
  if (o.kind === 'ending') return open?.spec.catch ? t.obstacle.missed : t.obstacle.ending;
  if (o.kind === 'touch') return t.obstacle.touch(o.solid);
  if (o.kind === 'limit') return o.limit === 'late' ? t.obstacle.late : t.obstacle.limit(t.limits[o.limit]);
  if (o.kind === 'wish') {
    const { wish, value } = o.term;
    const unit: AskUnit = state.asking()?.results.find((r) => r.id === wish.result)?.unit ?? 'count';
    const within = `${sayIn(unit, wish.value)} ± ${sayIn(unit, wish.tolerance)}`;
    return t.obstacle.wish(t.results[wish.result] ?? wish.result, sayIn(unit, value), within);
  }
  const name = open ? nameInput(o.input, spans, open.spec) : o.input;
  return t.obstacle[o.side](name, sayIn(state.inputOf(o.input)?.unit ?? o.unit, o.value), o.source);
}
