import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where all data is kept: `QUILTSIDE_DATA`, else the folder that this platform gives each user for the
 * data of programs (XDG base directories; ~/Library/Application Support; %LOCALAPPDATA%).
 */
export function dataFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform = process.platform): string {
  if (env.QUILTSIDE_DATA) return env.QUILTSIDE_DATA;
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), 'Quiltside');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Quiltside');
  return join(env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'quiltside');
}
