import type { ComponentType, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { FramePage } from '../../frame/view/frame-page.tsx';
import { isLetIn } from '../../link/state/let-in.ts';
import { openLog, openQuilt, switchQuilt } from '../../link/state/open-quilt.ts';
import { LetInPage } from '../../pairing/view/let-in-page.tsx';
import { QuiltsPage } from '../../quilts/view/quilts-page.tsx';
import { loadSettings } from '../../settings/state/machine-settings.ts';
import { type Page, route } from '../state/route.ts';
import { Shell } from './shell.tsx';

/** The Frame comes with the page; every other screen is fetched when it is first opened. */
const LATER: Partial<Record<Page | 'new', () => Promise<ComponentType>>> = {
  new: () => import('../../quilts/view/make-quilt-page.tsx').then((m) => m.MakeQuiltPage),
  quilt: () => import('../../quilt/view/quilt-page.tsx').then((m) => m.QuiltPage),
  days: () => import('../../days/view/days-page.tsx').then((m) => m.DaysPage),
  open: () => import('../../days/view/open-page.tsx').then((m) => m.OpenPage),
  estimate: () => import('../../estimate/view/estimate-page.tsx').then((m) => m.EstimatePage),
  record: () => import('../../record/view/record-page.tsx').then((m) => m.RecordPage),
  find: () => import('../../find/view/find-page.tsx').then((m) => m.FindPage),
  recordings: () => import('../../recordings/view/recordings-page.tsx').then((m) => m.RecordingsPage),
  help: () => import('../../help/view/help-page.tsx').then((m) => m.HelpPage),
  settings: () => import('../../settings/view/settings-page.tsx').then((m) => m.SettingsPage),
};
const fetched = new Map<string, ComponentType>();

export function App(): JSX.Element {
  const at = route.value;
  const quiltId = at.at === 'quilt' ? at.quiltId : null;
  useEffect(() => switchQuilt(quiltId), [quiltId]);

  const page = at.at === 'quilt' ? at.page : at.at;
  useEffect(() => {
    document.documentElement.lang = openLog.value?.quilt.spelling === 'american' ? 'en-US' : 'en-GB';
    document.title = `${TITLES[page]}${openLog.value ? `, ${openLog.value.quilt.name}` : ''} · Quiltside`;
  });
  if (!isLetIn.value) return <LetInPage onLetIn={() => void loadSettings()} />;
  return (
    <Shell>
      {at.at === 'quilts' ? (
        <QuiltsPage />
      ) : page === 'frame' ? (
        <Opened page={FramePage} />
      ) : (
        <Fetched key={page} name={page as Page | 'new'} />
      )}
    </Shell>
  );
}

const TITLES: Record<Page | 'quilts' | 'new', string> = {
  quilts: 'Quilts',
  new: 'Make a quilt',
  frame: 'Frame',
  quilt: 'Quilt',
  days: 'Days and hours',
  open: 'Open matters',
  estimate: 'Estimate',
  record: 'Record',
  find: 'Find',
  recordings: 'Recordings',
  help: 'What can I say?',
  settings: 'Settings',
};

function Fetched(props: { name: Page | 'new' }): JSX.Element {
  const [page, setPage] = useState<ComponentType | undefined>(() => fetched.get(props.name));
  const [fault, setFault] = useState(false);
  useEffect(() => {
    if (page) return;
    LATER[props.name]?.().then(
      (component) => {
        fetched.set(props.name, component);
        setPage(() => component);
      },
      () => setFault(true),
    );
  }, [props.name, page]);
  if (fault)
    return (
      <p class="notice bad">
        This page did not come. See that Quiltside is running, then load the page again.
      </p>
    );
  if (!page) return <p class="quiet">…</p>;
  if (props.name === 'new') {
    const Page = page;
    return <Page />;
  }
  return <Opened page={page} />;
}

/** A page of a quilt, once its log is there. */
function Opened(props: { page: ComponentType }): JSX.Element {
  const link = openQuilt.value;
  const log = openLog.value;
  if (!log || !link) {
    return (
      <div>
        <p class="quiet">Opening the log…</p>
        {link?.trouble.value ? (
          <p class="notice bad" role="alert">
            {link.trouble.value} <a href="#/">Go to the list of quilts</a>
          </p>
        ) : null}
      </div>
    );
  }
  const Page = props.page;
  return <Page />;
}
