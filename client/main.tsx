import { render } from 'preact';
import { loadSettings } from './features/settings/state/machine-settings.ts';
import { App } from './features/shell/view/app.tsx';
import './style/cloth.css';

void loadSettings();
render(<App />, document.getElementById('page')!);
