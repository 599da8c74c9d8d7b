"""The encoder-decoder of Whisper (Radford et al. 2022), small, with a CTC head that is dropped after training."""
import math

import torch
import torch.nn.functional as F
from torch import nn


class Attention(nn.Module):
    def __init__(self, width, heads):
        super().__init__()
        self.heads = heads
        self.q_proj = nn.Linear(width, width)
        self.k_proj = nn.Linear(width, width, bias=False)
        self.v_proj = nn.Linear(width, width)
        self.out_proj = nn.Linear(width, width)

    def split(self, x):
        return x.view(x.shape[0], x.shape[1], self.heads, -1).transpose(1, 2)

    def forward(self, x, source, causal=False):
        q, k, v = self.split(self.q_proj(x)), self.split(self.k_proj(source)), self.split(self.v_proj(source))
        if hasattr(F, "scaled_dot_product_attention"):
            out = F.scaled_dot_product_attention(q, k, v, is_causal=causal)
        else:
            scores = q @ k.transpose(-1, -2) / math.sqrt(q.shape[-1])
            if causal:
                scores = scores + torch.full(scores.shape[-2:], -1e9).triu(1)
            out = scores.softmax(-1) @ v
        return self.out_proj(out.transpose(1, 2).reshape(x.shape))


class Layer(nn.Module):
    def __init__(self, width, heads, across):
        super().__init__()
        self.self_attn = Attention(width, heads)
        self.self_attn_layer_norm = nn.LayerNorm(width)
        if across:
            self.encoder_attn = Attention(width, heads)
            self.encoder_attn_layer_norm = nn.LayerNorm(width)
        self.across = across
        self.fc1 = nn.Linear(width, 4 * width)
        self.fc2 = nn.Linear(4 * width, width)
        self.final_layer_norm = nn.LayerNorm(width)

    def forward(self, x, sound=None):
        y = self.self_attn_layer_norm(x)
        x = x + self.self_attn(y, y, causal=self.across)
        if self.across:
            x = x + self.encoder_attn(self.encoder_attn_layer_norm(x), sound)
        return x + self.fc2(F.gelu(self.fc1(self.final_layer_norm(x))))


def sinusoids(length, width):
    steps = torch.exp(-math.log(10_000) / (width // 2 - 1) * torch.arange(width // 2))
    angles = torch.arange(length)[:, None] * steps[None]
    return torch.cat([angles.sin(), angles.cos()], dim=1)


class Encoder(nn.Module):
    def __init__(self, shape):
        super().__init__()
        width = shape["width"]
        self.conv1 = nn.Conv1d(shape["mels"], width, 3, padding=1)
        self.conv2 = nn.Conv1d(width, width, 3, stride=2, padding=1)
        self.register_buffer("embed_positions", sinusoids(shape["frames"], width))
        self.layers = nn.ModuleList(Layer(width, shape["heads"], False) for _ in range(shape["encoder_layers"]))
        self.layer_norm = nn.LayerNorm(width)

    def forward(self, mel):
        x = F.gelu(self.conv2(F.gelu(self.conv1(mel)))).transpose(1, 2) + self.embed_positions
        for layer in self.layers:
            x = layer(x)
        return self.layer_norm(x)


class Decoder(nn.Module):
    def __init__(self, shape):
        super().__init__()
        width = shape["width"]
        self.embed_tokens = nn.Embedding(shape["vocabulary"], width)
        self.embed_positions = nn.Parameter(torch.randn(shape["context"], width) * 0.02)
        self.layers = nn.ModuleList(Layer(width, shape["heads"], True) for _ in range(shape["decoder_layers"]))
        self.layer_norm = nn.LayerNorm(width)
        nn.init.normal_(self.embed_tokens.weight, std=0.02)

    def forward(self, ids, sound):
        x = self.embed_tokens(ids) + self.embed_positions[: ids.shape[1]]
        for layer in self.layers:
            x = layer(x, sound)
        return self.layer_norm(x) @ self.embed_tokens.weight.T


SHAPE = {
    "width": 256, "heads": 4, "encoder_layers": 6, "decoder_layers": 3, "mels": 80,
    "frames": 500, "context": 192, "vocabulary": 1024,
}  # fmt: skip


class Speech(nn.Module):
    def __init__(self, shape):
        super().__init__()
        self.encoder = Encoder(shape)
        self.decoder = Decoder(shape)
        self.ctc = nn.Linear(shape["width"], shape["vocabulary"] + 1)

    def forward(self, mel, ids):
        sound = self.encoder(mel)
        return self.decoder(ids, sound), self.ctc(sound)
