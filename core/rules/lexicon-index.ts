import type {
  Action,
  Finding,
  Material,
  Measure,
  RemovedObject,
  Stitch,
  Task,
  Topic,
} from '../../shared/vocabulary.ts';
import { ACTION_PHRASES, ACTION_VERBS } from '../lexicon/actions.ts';
import { FAILURE_PHRASES, SEAM_NOUNS, STITCH_NOUNS } from '../lexicon/failures.ts';
import { FINDING_PHRASES } from '../lexicon/findings.ts';
import { MATERIAL_PHRASES } from '../lexicon/materials.ts';
import { MEASURE_PHRASES } from '../lexicon/measures.ts';
import { OBJECT_PHRASES } from '../lexicon/objects.ts';
import { PART_PHRASES } from '../lexicon/place-words.ts';
import { STITCH_PHRASES } from '../lexicon/stitches.ts';
import { TASK_PHRASES, TOPIC_WORDS } from '../lexicon/tasks.ts';
import { inflect } from '../text/inflect.ts';
import { PhraseTrie } from '../text/phrase-trie.ts';

export type Sense =
  | { k: 'finding'; v: Finding }
  | { k: 'fail' }
  | { k: 'seam' }
  | { k: 'stitches' }
  | { k: 'action'; v: Action; form: 'past' | 'ing' | 'base' }
  | { k: 'stitch'; v: Stitch }
  | { k: 'material'; v: Material }
  | { k: 'object'; v: RemovedObject }
  | { k: 'part'; v: string }
  | { k: 'task'; v: Task }
  | { k: 'topic'; v: Topic }
  | { k: 'measure'; v: Measure };

/** All phrases of the lexicon in one tree, made once. */
export const LEXICON: PhraseTrie<Sense> = build();

function build(): PhraseTrie<Sense> {
  const trie = new PhraseTrie<Sense>();
  for (const [v, phrases] of Object.entries(FINDING_PHRASES))
    for (const p of phrases) trie.add(p, { k: 'finding', v: v as Finding });
  for (const p of FAILURE_PHRASES) trie.add(p, { k: 'fail' });
  for (const p of SEAM_NOUNS) trie.add(p, { k: 'seam' });
  for (const p of STITCH_NOUNS) trie.add(p, { k: 'stitches' });
  for (const [v, rows] of Object.entries(ACTION_VERBS)) {
    for (const row of rows) {
      const forms = inflect(row);
      for (const form of ['past', 'ing', 'base'] as const)
        for (const p of forms[form]) trie.add(p, { k: 'action', v: v as Action, form });
    }
  }
  for (const [p, v, form] of ACTION_PHRASES) trie.add(p, { k: 'action', v, form });
  for (const [v, { phrases }] of Object.entries(STITCH_PHRASES))
    for (const p of phrases) trie.add(p, { k: 'stitch', v: v as Stitch });
  for (const [v, phrases] of Object.entries(MATERIAL_PHRASES))
    for (const p of phrases) trie.add(p, { k: 'material', v: v as Material });
  for (const [v, phrases] of Object.entries(OBJECT_PHRASES))
    for (const p of phrases) trie.add(p, { k: 'object', v: v as RemovedObject });
  for (const [p, v] of PART_PHRASES) trie.add(p, { k: 'part', v });
  for (const [v, phrases] of Object.entries(TASK_PHRASES))
    for (const p of phrases) if (!p.startsWith('the ')) trie.add(p, { k: 'task', v: v as Task });
  for (const [v, phrases] of Object.entries(TOPIC_WORDS))
    for (const p of phrases) trie.add(p, { k: 'topic', v: v as Topic });
  for (const [v, phrases] of Object.entries(MEASURE_PHRASES))
    for (const p of phrases) trie.add(p, { k: 'measure', v: v as Measure });
  return trie;
}
