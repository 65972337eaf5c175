import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { layOutBlocks } from '../../../../core/shape/lay-out-blocks.ts';
import { shapeWords } from '../../../../core/shape/shape-words.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';
import type { QuiltCard } from '../../../../shared/settings.ts';
import { dateWords } from '../../../words/figure-words.ts';
import { PairingCode } from '../../pairing/view/pairing-code.tsx';
import { pageAddress } from '../../shell/state/route.ts';
import { cardsFault, loadQuiltCards, quiltCards } from '../state/quilt-cards.ts';
import { BringIn } from './bring-in.tsx';
import './quilts.css';

/** The quilts on this machine, the one last worked on first. */
export function QuiltsPage(): JSX.Element {
  useEffect(() => {
    void loadQuiltCards();
  }, []);
  const cards = quiltCards.value;
  return (
    <div class="quilts-page">
      <header class="masthead">
        <h1>Quiltside</h1>
        <p>
          Say what you see, do, buy and wonder about while you mend an old quilt. It becomes the log, the
          hours, the estimate and the owner’s record. Nothing leaves this machine.
        </p>
        <hr class="masthead-line" />
      </header>
      <PairingCode />
      {cardsFault.value ? (
        <p class="notice bad" role="alert">
          {cardsFault.value}{' '}
          <button type="button" onClick={() => void loadQuiltCards()}>
            Try again
          </button>
        </p>
      ) : null}
      {cards && cards.length > 0 ? (
        <section aria-labelledby="on-hand">
          <div class="page-head">
            <h2 id="on-hand">Quilts in hand</h2>
            <a class="tab chief" href="#/new">
              Make a quilt
            </a>
          </div>
          <ul class="plain stack">
            {[...cards]
              .sort((a, b) => b.lastAt.localeCompare(a.lastAt))
              .map((card) => (
                <Card key={card.id} card={card} />
              ))}
          </ul>
        </section>
      ) : cards ? (
        <section class="first-start">
          <h2>Nothing in hand yet</h2>
          <p>
            Begin with the quilt in front of you: its name and how many blocks it has across and down. All the
            rest can be said later.
          </p>
          <p class="row">
            <a class="tab chief" href="#/new">
              Make a quilt
            </a>
          </p>
          <p class="quiet">
            To look round first, stop this and run <code>npm run demo</code>: it opens a finished job of an
            invented quilt, on a copy that is thrown away.
          </p>
        </section>
      ) : cardsFault.value ? null : (
        <p class="quiet">Looking for your quilts…</p>
      )}
      {cards ? <BringIn /> : null}
    </div>
  );
}

const round = (n: number): number => Math.round(n * 10) / 10;

function Card(props: { card: QuiltCard }): JSX.Element {
  const { card } = props;
  const shaped = card.shape && card.rows <= 12 && card.blocks <= 12 ? card.shape : undefined;
  const grid = {
    rows: Math.min(card.rows, 12),
    blocks: Math.min(card.blocks, 12),
    ...(shaped ? { shape: shaped } : {}),
  };
  const { blocks, ratio } = layOutBlocks(grid);
  const width = 84 * Math.min(1, ratio);
  const height = width / ratio;
  const corner = { x: 50 - width / 2, y: 50 - height / 2 };
  return (
    <li>
      <a class="quilt-card" href={pageAddress(card.id, 'frame')}>
        <svg viewBox="0 0 100 100" aria-hidden="true" class="swatch">
          <rect
            x={corner.x - 6}
            y={corner.y - 6}
            width={width + 12}
            height={height + 12}
            class="swatch-edge"
          />
          {blocks.map(({ place, row, block, outline }) => (
            <path
              key={place}
              d={`M${outline.map(([u, v]) => `${round(corner.x + u * width)} ${round(corner.y + v * height)}`).join('L')}Z`}
              class={(row + block) % 2 ? 'swatch-light' : 'swatch-dark'}
            />
          ))}
        </svg>
        <span>
          <span class="card-name">{card.name}</span>
          <span class="card-owner quiet">
            {card.owner ? `for ${card.owner}, ` : ''}
            {card.shape ? shapeWords(card as QuiltGrid) : `${card.rows} × ${card.blocks} blocks`}
          </span>
        </span>
        <span class="card-last">
          {card.entries} {card.entries === 1 ? 'entry' : 'entries'}
          <span class="quiet">last at it {dateWords(card.lastAt.slice(0, 10), 'short')}</span>
        </span>
      </a>
    </li>
  );
}
