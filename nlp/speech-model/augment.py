"""What rooms, microphones and weather do to a voice, on whole batches: everything drawn anew for every window."""
import torch

RATE = 16_000


class Augment:
    def __init__(self, samples, device):
        self.samples, self.device = samples, device
        self.length = samples + RATE // 2
        self.bins = self.length // 2 + 1

    def chance(self, batch, share):
        return (torch.rand(batch, 1, device=self.device) < share).float()

    def between(self, batch, low, high):
        return torch.rand(batch, 1, device=self.device) * (high - low) + low

    def tone(self, batch):
        """Gain by frequency: a random curve of +-8 dB, and for some a narrow band as of a cheap microphone."""
        knots = torch.randn(batch, 1, 10, device=self.device) * 4
        curve = torch.nn.functional.interpolate(knots, size=self.bins, mode="linear", align_corners=True)[:, 0]
        hertz = torch.linspace(0, RATE / 2, self.bins, device=self.device)[None]
        low, high = self.between(batch, 60, 350), self.between(batch, 3000, 7800)
        band = 1 / (1 + (low / (hertz + 1)) ** 4) / (1 + (hertz / high) ** 8)
        narrow = self.chance(batch, 0.3)
        return 10 ** (curve * self.chance(batch, 0.7) / 20) * (narrow * band + 1 - narrow)

    def room(self, batch):
        """Spectrum of a direct sound with a tail of noise that dies away (Polack's model of a diffuse room)."""
        time = torch.arange(RATE // 2, device=self.device)[None] / RATE
        decay = self.between(batch, 0.08, 0.5)
        tail = torch.randn(batch, RATE // 2, device=self.device) * torch.exp(-6.9 * time / decay) * (time > 0.002)
        tail = tail / tail.square().sum(1, keepdim=True).sqrt().clamp(min=1e-6)
        tail = tail * self.between(batch, 0.1, 0.8) * self.chance(batch, 0.45)
        tail[:, 0] = 1
        return torch.fft.rfft(tail, n=self.length)

    def noise(self, batch):
        """White to brown, with a hum for some; of unit power over the window."""
        white = torch.fft.rfft(torch.randn(batch, self.length, device=self.device))
        hertz = torch.linspace(0, RATE / 2, self.bins, device=self.device)[None].clamp(min=20)
        sound = torch.fft.irfft(white * hertz ** -self.between(batch, 0, 1.6), n=self.length)[:, : self.samples]
        sound = sound / sound.std(1, keepdim=True)
        time = torch.arange(self.samples, device=self.device)[None] / RATE
        base = self.between(batch, 45, 130) * 6.2832
        hum = torch.sin(base * time) + 0.5 * torch.sin(2 * base * time) + 0.4 * torch.sin(4 * base * time)
        return sound + hum * self.chance(batch, 0.15) * self.between(batch, 0.3, 1.5)

    def __call__(self, voice, inside):
        """`voice` [batch, samples]; `inside` 1 where the recording lasts, 0 behind its end."""
        batch = voice.shape[0]
        loud = voice.square().sum(1, keepdim=True) / (voice.abs() > 1e-3).sum(1, keepdim=True).clamp(min=1)
        voice = torch.fft.irfft(torch.fft.rfft(voice, n=self.length) * self.tone(batch) * self.room(batch), n=self.length)
        voice = voice[:, : self.samples]
        below = 10 ** (-self.between(batch, 5, 40) / 20)
        faint = 10 ** (-self.between(batch, 45, 75) / 20)
        noisy = self.chance(batch, 0.65)
        sound = voice + self.noise(batch) * loud.sqrt().clamp(min=1e-3) * (noisy * below + (1 - noisy) * faint)
        level = 10 ** (self.between(batch, -30, 4) / 20) / sound.abs().amax(1, keepdim=True).clamp(min=1e-4)
        return (sound * level).clamp(-1, 1) * inside


def mask_features(mel, device):
    """SpecAugment (Park et al. 2019): a few bands and short stretches put to the mean."""
    batch, bands, frames = mel.shape
    band, frame = torch.arange(bands, device=device)[None], torch.arange(frames, device=device)[None]
    hidden = torch.zeros(batch, bands, frames, dtype=torch.bool, device=device)
    for _ in range(2):
        start, width = torch.rand(batch, 1, device=device) * bands, torch.rand(batch, 1, device=device) * 12
        hidden |= ((band >= start) & (band < start + width))[:, :, None]
        start, width = torch.rand(batch, 1, device=device) * frames, torch.rand(batch, 1, device=device) * 20
        hidden |= ((frame >= start) & (frame < start + width))[:, None]
    keep = torch.rand(batch, 1, 1, device=device) < 0.35
    return torch.where(hidden & ~keep, mel.mean(dim=(1, 2), keepdim=True), mel)
