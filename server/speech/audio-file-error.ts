/** The file cannot be heard. `message` says what was expected, what was got and what to do, in one line. */
export class AudioFileError extends Error {
  override name = 'AudioFileError';
  readonly reason:
    | 'missing'
    | 'empty'
    | 'not-audio'
    | 'unsupported'
    | 'cut-short'
    | 'damaged'
    | 'too-large'
    | 'too-long';
  constructor(reason: AudioFileError['reason'], message: string) {
    super(message);
    this.reason = reason;
  }
}
