"""Whisper's log-mel spectrogram (Radford et al. 2022): 80 Slaney mel bands, 25 ms Hann windows every 10 ms."""
import math

import torch

RATE, FFT, HOP, MELS = 16_000, 400, 160, 80


def hertz_to_mel(hertz):
    """Slaney's auditory toolbox: linear below 1000 Hz, logarithmic above."""
    return hertz * 3 / 200 if hertz < 1000 else 15 + math.log(hertz / 1000) * 27 / math.log(6.4)


def mel_to_hertz(mel):
    return mel * 200 / 3 if mel < 15 else 1000 * math.exp((mel - 15) * math.log(6.4) / 27)


def mel_filters():
    """[201, 80], each band of unit area."""
    top = hertz_to_mel(RATE / 2)
    edges = torch.tensor([mel_to_hertz(top * i / (MELS + 1)) for i in range(MELS + 2)], dtype=torch.float64)
    bins = torch.linspace(0, RATE / 2, FFT // 2 + 1, dtype=torch.float64)
    up = (bins[:, None] - edges[None, :-2]) / (edges[1:-1] - edges[:-2])
    down = (edges[None, 2:] - bins[:, None]) / (edges[2:] - edges[1:-1])
    return (torch.minimum(up, down).clamp(min=0) * 2 / (edges[2:] - edges[:-2])).float()


def log_mel(sound, filters, window):
    """[batch, samples] between -1 and 1 to [batch, 80, samples / 160]."""
    spectrum = torch.stft(sound, FFT, HOP, window=window, center=True, pad_mode="reflect", return_complex=True)
    power = spectrum[..., :-1].abs().square()
    mel = torch.einsum("bft,fm->bmt", power, filters).clamp(min=1e-10).log10()
    floor = mel.amax(dim=(1, 2), keepdim=True) - 8
    return (torch.maximum(mel, floor) + 4) / 4
