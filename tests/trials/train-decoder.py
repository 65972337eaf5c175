"""Teaches the recogniser's decoder how notes of the trade go on, and writes it in the layout of the decoder it began from.

    python train-decoder.py FOLDER DECODER.onnx OUT.onnx [STEPS]

FOLDER holds `states.f16` and `notes.jsonl` of `npm run models:training-set`, DECODER.onnx is whisper-base's. The encoder, the
embedding and the positions stay as they are; the decoder's six layers are trained on the words of each note, the prompt given as
it is when the recogniser listens. Needs jax 0.10, optax 0.2, onnx 1.23 and numpy; 860 steps of 8 notes take 40 minutes on two
cores and 8 GB.
"""
import json
import sys

import jax
import jax.numpy as jnp
import numpy as np
import onnx
import optax
from onnx import numpy_helper

PREFIX = [50258, 50259, 50359, 50363]  # start, English, transcribe, no timestamps
END, PREVIOUS = 50257, 50361
LAYERS, WIDTH, HEADS = 6, 512, 8
BATCH, RATE, WARM_UP = 8, 2.5e-5, 40
# Lengths that notes are filled up to, so that few shapes have to be compiled: tokens, frames, tokens of the note itself.
TOKENS, FRAMES, TARGETS = (96, 160, 224), (500, 750, 1100), (48, 112)
MATRICES = [f"{a}.{p}_proj" for a in ("self_attn", "encoder_attn") for p in ("q", "k", "v", "out")] + ["fc1", "fc2"]
NORMS = ["self_attn_layer_norm", "encoder_attn_layer_norm", "final_layer_norm"]
BIASES = [m for m in MATRICES if not m.endswith("k_proj")]
LAST_NORM = "model.decoder.layer_norm"


def read_decoder(model):
    """The decoder's weights as 32-bit floats: what is trained, stacked by layer; and what stays."""
    held = {each.name: numpy_helper.to_array(each) for each in model.graph.initializer}
    name = "model.decoder.layers.{}.{}".format
    matrix = lambda n: held[n + ".weight_t_q"].astype(np.float32) * held[n + ".weight_t_s"][None, :]
    layers = {}
    for part in MATRICES:
        layers[part + ".w"] = np.stack([matrix(name(i, part)) for i in range(LAYERS)])
    for part in BIASES + NORMS:
        layers[part + ".b"] = np.stack([held[name(i, part) + ".bias"] for i in range(LAYERS)])
    for part in NORMS:
        layers[part + ".w"] = np.stack([held[name(i, part) + ".weight"] for i in range(LAYERS)])
    trained = {"layers": layers, "last": {"w": held[LAST_NORM + ".weight"], "b": held[LAST_NORM + ".bias"]}}
    stays = {
        "embedding": held["emb_q"].astype(np.float32) * held["emb_s"][:, None],
        "positions": held["model.decoder.embed_positions.weight"],
    }
    return jax.tree.map(jnp.asarray, trained), jax.tree.map(jnp.asarray, stays)


def write_decoder(model, trained, path):
    """Rounds to int8 held to 7 bits with one scale an output column, as the decoder had it."""
    held = {each.name: each for each in model.graph.initializer}

    def put(name, values):
        held[name].CopyFrom(numpy_helper.from_array(np.ascontiguousarray(values), name))

    for part, stacked in trained["layers"].items():
        name, kind = part.rsplit(".", 1)
        for i, values in enumerate(np.asarray(stacked, np.float32)):
            full = f"model.decoder.layers.{i}.{name}"
            if kind == "b" or name in NORMS:
                put(full + (".bias" if kind == "b" else ".weight"), values)
                continue
            scale = np.maximum(np.abs(values).max(0) / 63, 1e-8).astype(np.float32)
            put(full + ".weight_t_q", np.clip(np.round(values / scale), -63, 63).astype(np.int8))
            put(full + ".weight_t_s", scale)
    put(LAST_NORM + ".weight", np.asarray(trained["last"]["w"], np.float32))
    put(LAST_NORM + ".bias", np.asarray(trained["last"]["b"], np.float32))
    onnx.save(model, path)


def normed(x, w, b):
    mean = x.mean(-1, keepdims=True)
    return (x - mean) / jnp.sqrt(((x - mean) ** 2).mean(-1, keepdims=True) + 1e-5) * w + b


def attend(layer, part, x, seen, mask):
    parted = lambda y: y.reshape(*y.shape[:2], HEADS, WIDTH // HEADS)
    q = parted(x @ layer[f"{part}.q_proj.w"] + layer[f"{part}.q_proj.b"]) * (WIDTH // HEADS) ** -0.5
    k = parted(seen @ layer[f"{part}.k_proj.w"])
    v = parted(seen @ layer[f"{part}.v_proj.w"] + layer[f"{part}.v_proj.b"])
    weights = jax.nn.softmax(jnp.where(mask, jnp.einsum("bqhd,bkhd->bhqk", q, k), -1e9), -1)
    mixed = jnp.einsum("bhqk,bkhd->bqhd", weights, v).reshape(x.shape)
    return mixed @ layer[f"{part}.out_proj.w"] + layer[f"{part}.out_proj.b"]


def loss_of(trained, stays, tokens, states, is_frame, places, targets):
    """Mean of −log p over the notes' own tokens and their end, nats."""
    states = states.astype(jnp.float32)
    length = tokens.shape[1]
    before = jnp.tril(jnp.ones((length, length), bool))[None, None]
    norm = lambda layer, part, x: normed(x, layer[part + ".w"], layer[part + ".b"])

    def through(x, layer):
        heard = norm(layer, "self_attn_layer_norm", x)
        x = x + attend(layer, "self_attn", heard, heard, before)
        x = x + attend(
            layer, "encoder_attn", norm(layer, "encoder_attn_layer_norm", x), states, is_frame[:, None, None, :]
        )
        y = norm(layer, "final_layer_norm", x) @ layer["fc1.w"] + layer["fc1.b"]
        return x + jax.nn.gelu(y, approximate=False) @ layer["fc2.w"] + layer["fc2.b"], None

    x, _ = jax.lax.scan(through, stays["embedding"][tokens] + stays["positions"][:length][None], trained["layers"])
    x = jnp.take_along_axis(x, places[:, :, None], 1)
    logits = normed(x, trained["last"]["w"], trained["last"]["b"]) @ stays["embedding"].T
    log_probs = jnp.take_along_axis(jax.nn.log_softmax(logits, -1), jnp.maximum(targets, 0)[:, :, None], 2)[:, :, 0]
    counts = targets >= 0
    return -(log_probs * counts).sum() / jnp.maximum(counts.sum(), 1)


def batches(notes, states, chance):
    """Notes of like length together, in an order by chance; what does not fill a batch is left for the next round."""
    waiting = {}
    for i in chance.permutation(len(notes)):
        note = notes[i]
        length = len(note["prompt"]) + 1 + len(PREFIX) + len(note["target"])
        fitting = lambda sizes, size: next((each for each in sizes if size <= each), None)
        shape = (fitting(TOKENS, length), fitting(FRAMES, note["frames"]), fitting(TARGETS, len(note["target"]) + 1))
        if None in shape:
            continue
        alike = waiting.setdefault(shape, [])
        alike.append(note)
        if len(alike) == BATCH:
            yield fill(waiting.pop(shape), shape, states)


def fill(notes, shape, states):
    length, frames, most = shape
    tokens = np.full((BATCH, length), END, np.int32)
    heard = np.zeros((BATCH, frames, WIDTH), np.float16)
    is_frame = np.zeros((BATCH, frames), bool)
    places = np.zeros((BATCH, most), np.int32)
    targets = np.full((BATCH, most), -1, np.int32)
    for i, note in enumerate(notes):
        start = ([PREVIOUS, *note["prompt"]] if note["prompt"] else []) + PREFIX
        words = start + note["target"]
        tokens[i, : len(words)] = words
        heard[i, : note["frames"]] = states[note["at"] : note["at"] + note["frames"] * WIDTH].reshape(-1, WIDTH)
        is_frame[i, : note["frames"]] = True
        wanted = note["target"] + [END]
        places[i, : len(wanted)] = np.arange(len(start) - 1, len(start) - 1 + len(wanted))
        targets[i, : len(wanted)] = wanted
    return tokens, heard, is_frame, places, targets


def main(folder, decoder, out, steps=860):
    model = onnx.load(decoder)
    trained, stays = read_decoder(model)
    with open(f"{folder}/notes.jsonl") as lines:
        notes = [json.loads(line) for line in lines]
    states = np.memmap(f"{folder}/states.f16", np.float16, "r")
    rate = optax.warmup_cosine_decay_schedule(0, RATE, min(WARM_UP, steps // 4), steps, RATE / 20)
    optimiser = optax.chain(optax.clip_by_global_norm(1.0), optax.adamw(rate, b2=0.98, weight_decay=0.0))
    state = optimiser.init(trained)

    @jax.jit
    def step(trained, state, stays, batch):
        loss, slope = jax.value_and_grad(loss_of)(trained, stays, *batch)
        change, state = optimiser.update(slope, state, trained)
        return optax.apply_updates(trained, change), state, loss

    chance = np.random.default_rng(1)
    losses = []
    while len(losses) < steps:
        for batch in batches(notes, states, chance):
            trained, state, loss = step(trained, state, stays, batch)
            losses.append(float(loss))
            if len(losses) % 50 == 0:
                print(f"{len(losses)} of {steps}: {np.mean(losses[-50:]):.3f} nats a token", flush=True)
            if len(losses) == steps:
                break
    write_decoder(model, jax.tree.map(np.asarray, trained), out)


if __name__ == "__main__":
    main(*sys.argv[1:4], *map(int, sys.argv[4:5]))
