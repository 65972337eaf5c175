declare module 'webvtt-parser' {
  export class WebVTTParser {
    parse(
      text: string,
      mode: 'subtitles/captions/descriptions' | 'chapters' | 'metadata',
    ): {
      cues: { id: string; startTime: number; endTime: number; text: string }[];
      errors: { message: string; line: number }[];
    };
  }
}
