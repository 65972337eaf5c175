"""Hears WAV files with the CTranslate2 engine: a folder of weights as argument, a path a line in, a line of JSON out.

Needs the registry's faster-whisper (1.2.1 was used). Greedy, int8, two threads, no context, so that both engines do the same.
"""
import json
import sys
import time

from faster_whisper import WhisperModel, decode_audio

model = WhisperModel(sys.argv[1], device="cpu", compute_type="int8", cpu_threads=2, num_workers=1)
for line in sys.stdin:
    sound = decode_audio(line.strip(), sampling_rate=16000)
    began = time.perf_counter()
    segments, _ = model.transcribe(
        sound,
        language="en",
        beam_size=1,
        best_of=1,
        temperature=0.0,
        without_timestamps=True,
        condition_on_previous_text=False,
    )
    text = " ".join(segment.text.strip() for segment in segments)
    print(json.dumps({"text": text, "ms": (time.perf_counter() - began) * 1000}), flush=True)
