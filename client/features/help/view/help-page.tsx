import type { JSX } from 'preact';
import type { Quilt } from '../../../../shared/quilt.ts';
import { noteDraft } from '../../frame/state/note-draft.ts';
import { openLog } from '../../link/state/open-quilt.ts';
import { heldKey, keyWords } from '../../settings/state/held-key.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { singleKeys } from '../../settings/state/single-keys.ts';
import { goTo, pageAddress } from '../../shell/state/route.ts';
import './help.css';

const NUMBERS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const word = (n: number): string => NUMBERS[n - 1] ?? String(n);

/** What can be said, with this quilt's own rows, blocks and fabrics in the examples. */
function examples(quilt: Quilt): { head: string; say: string[] }[] {
  const row = Math.min(2, quilt.rows);
  const block = Math.min(3, quilt.blocks);
  const last = word(quilt.rows);
  const fabric = Object.keys(quilt.fabrics ?? {})[0];
  const named = Object.keys(quilt.placeNames ?? {})[0];
  const wadding = quilt.spelling === 'american' ? 'batting' : 'wadding';
  return [
    {
      head: 'What you find',
      say: [
        `Row ${word(row)}, block ${word(block)} has a split seam.`,
        `The ${wadding} is lumpy in the whole of row ${last}.`,
        ...(named ? [`The ${named} has a tear.`] : []),
        fabric ? `All the ${fabric} blocks are faded.` : 'There is a tide line along the bottom border.',
        'The backing is sound.',
      ],
    },
    {
      head: 'What you do, or mean to do',
      say: [
        `Re-sewed the split seam in row ${word(row)}, block ${word(block)} by hand, twenty minutes.`,
        'Same again on the one below.',
        'I will patch the tear tomorrow.',
        `For ${word(row)} ${word(block)} either net over it or a new piece, I am not sure.`,
        'Leave the fading as it is, because it is part of its story.',
      ],
    },
    {
      head: 'Time',
      say: [
        'Starting on the binding.',
        'Stopped at ten past four.',
        'From nine to quarter to one, with half an hour off.',
      ],
    },
    {
      head: 'Cloth, thread and money',
      say: [
        'Bought four yards of calico at six fifty the yard.',
        `I still need a yard and three eighths of ${wadding}.`,
        'Used half a skein of grey thread.',
      ],
    },
    {
      head: 'Measures',
      say: [
        quilt.unit === 'cm'
          ? 'It is one hundred and fifty by one hundred and eighty centimetres.'
          : 'It is sixty by seventy-two inches.',
        'The blocks are nine inches.',
      ],
    },
    {
      head: 'What is open or settled',
      say: ['Tie it or quilt it? She wants to think.', 'She says tie it. Settled.'],
    },
    {
      head: 'Putting it right',
      say: ['No, row three, not row two.', 'Scratch that.', 'It was ten minutes, not twenty.'],
    },
    {
      head: 'Its ears',
      say: [
        'Not listening for ten minutes.',
        'Stop listening till I say so.',
        'Listen again.',
        'Listen only when I call you.',
      ],
    },
    {
      head: 'Asking',
      say: [
        'What have I still not decided?',
        'How long on the mending?',
        'What did I do today?',
        `What did I say about row ${word(row)}?`,
        'What do I still have to buy?',
        'What does the record still lack?',
      ],
    },
  ];
}

export function HelpPage(): JSX.Element {
  const log = openLog.value!;
  const settings = machineSettings.value ?? UNTIL_KNOWN;
  return (
    <div class="help-page">
      <header class="page-head">
        <h1>What can I say here?</h1>
        <p>
          Talk as you would to somebody at the other side of the frame. These are examples from this quilt;
          touch one and it stands in the note line, to change and write down.
        </p>
      </header>
      <div class="help-grid">
        {examples(log.quilt).map(({ head, say }) => (
          <section key={head}>
            <h2>{head}</h2>
            <ul class="plain">
              {say.map((words) => (
                <li key={words}>
                  <button
                    type="button"
                    class="example"
                    onClick={() => {
                      noteDraft.value = words;
                      goTo(pageAddress(log.quilt.id, 'frame'));
                    }}
                  >
                    “{words}”
                  </button>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <section class="patch">
        <h2>Keys</h2>
        <ul>
          <li>
            <kbd>{keyWords(heldKey.value)}</kbd>{' '}
            {settings.listening === 'held'
              ? 'held down on the Frame: it listens'
              : 'on the Frame: begins and stops listening'}
            . A foot pedal can be set in Settings.
          </li>
          <li>
            <kbd>N</kbd> goes to the note line, <kbd>Enter</kbd> writes it down. While the record asks:{' '}
            <kbd>U</kbd> not known, <kbd>O</kbd> none, <kbd>L</kbd> later, <kbd>Q</kbd> no more questions.
            {singleKeys.value ? '' : ' (Single keys are switched off in Settings.)'}
          </li>
          <li>
            On a day: <kbd>↓</kbd> <kbd>↑</kbd> from entry to entry, <kbd>Enter</kbd> right, <kbd>E</kbd> put
            right, <kbd>M</kbd> move, <kbd>X</kbd> take out, <kbd>W</kbd> which words gave it, <kbd>P</kbd>{' '}
            play, <kbd>U</kbd> take back.
          </li>
          <li>
            On the quilt: arrow keys from block to block, <kbd>Enter</kbd> opens its story.
          </li>
        </ul>
      </section>
      <section class="patch cautions">
        <h2>Before you begin, and before you wash</h2>
        <ul>
          <li>
            Mould: keep the piece apart, wear gloves and a mask; with asthma or allergies let somebody else
            handle it.
          </li>
          <li>
            Washing can’t be taken back. A test patch is not proof. If any dye bleeds, stop; where in doubt
            ask a textile conservator.
          </li>
          <li>
            Count needles and pins out and in, and go over the quilt with a magnet before it leaves you.
          </li>
          <li>
            An old textile is not pressed with a hot iron; shattering silk and rusting browns can only be
            slowed.
          </li>
          <li>A mended quilt is no bedding for a sleeping infant, and loose ties are a danger to pets.</li>
        </ul>
        <p class="small quiet">
          The usual cautions, common practice. Local rules and a conservator’s advice come first.
        </p>
      </section>
    </div>
  );
}
