"""Word error rate of greedy decoding on plans of a pool."""
import torch

from spoken import word_error_rate


@torch.no_grad()
def transcribe(model, mel, tokens, most=100):
    special = tokens.special
    ids = torch.tensor([[special["<|startoftranscript|>"], special["<|notimestamps|>"]]] * len(mel), device=mel.device)
    sound = model.encoder(mel)
    done = torch.zeros(len(mel), dtype=torch.bool, device=mel.device)
    for _ in range(most):
        following = model.decoder(ids, sound)[:, -1].argmax(-1).masked_fill(done, special["<|endoftext|>"])
        ids = torch.cat([ids, following[:, None]], dim=1)
        done |= following == special["<|endoftext|>"]
        if done.all():
            break
    return [tokens.decode(row[2:].tolist()) for row in ids]


def score(model, mels, texts, tokens, batch=64):
    heard = []
    for at in range(0, len(mels), batch):
        heard += transcribe(model, mels[at : at + batch], tokens)
    return word_error_rate(list(zip(texts, heard))), heard
