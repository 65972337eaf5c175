/** Folder under models/ of the recogniser that is used where the settings name no other. */
export const RECOGNISER_MODEL = 'whisper-base-trade';
