/** The way to the large stage, in the corner of the flight, for a finger. */
import { Icon } from '../../../ui/icon.tsx';
import { useShell } from '../../page.ts';
import { stageTexts } from './words.ts';

/** `right`: px from the right edge of the page */
export function EnlargeButton(props: { right: number }) {
  const shell = useShell();
  return (
    <button
      type="button"
      class="to-large"
      style={{ right: `${props.right}px` }}
      aria-label={stageTexts.enlarge}
      onClick={() => shell.toggleLarge()}
    >
      <Icon name="enlarge" size={18} />
    </button>
  );
}
