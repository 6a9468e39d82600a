/** Lets the flight run, and holds it: an arc that goes over, a plumb line that holds still. The word is written where it has room. */
import { Icon } from './icon.tsx';

export function PlayKey(props: {
  playing: boolean;
  words: { readonly play: string; readonly pause: string };
  size?: number;
  onPress: () => void;
}) {
  const word = (): string => (props.playing ? props.words.pause : props.words.play);
  return (
    <button type="button" class="play" aria-label={word()} title={word()} onClick={() => props.onPress()}>
      <Icon name={props.playing ? 'hold' : 'fly'} size={props.size ?? 20} />
      <span class="play-word">{word()}</span>
    </button>
  );
}
