/**
 * The browser's own voice, only where it is made on this machine: a remote voice would send the
 * words of the log away.
 */
export function localVoice(language: string): SpeechSynthesisVoice | null {
  if (typeof speechSynthesis === 'undefined') return null;
  const local = speechSynthesis
    .getVoices()
    .filter((voice) => voice.localService && voice.lang.startsWith('en'));
  return local.find((voice) => voice.lang.replace('_', '-') === language) ?? local[0] ?? null;
}

/** Speaks; resolves when it has been said, broken off or refused. */
export function speak(text: string, voice: SpeechSynthesisVoice): Promise<void> {
  return new Promise((resolve) => {
    const utterance = new SpeechSynthesisUtterance(text);
    utterance.voice = voice;
    utterance.lang = voice.lang;
    utterance.rate = 1.02;
    // A voice that never reports its end must not keep the tool deaf.
    const longest = setTimeout(resolve, 2000 + text.length * 120);
    const finish = () => {
      clearTimeout(longest);
      resolve();
    };
    utterance.onend = finish;
    utterance.onerror = finish;
    speechSynthesis.speak(utterance);
  });
}

export function hush(): void {
  if (typeof speechSynthesis !== 'undefined') speechSynthesis.cancel();
}
