import currency from "./currency.json" with { type: "json" };

/** A sum in the owner's own currency: "$24", "£7.50". */
export const sayMoney = (amount: number, zone: string): string => {
  const [sign] = Object.entries(currency.signs)
    .filter(([start]) => zone.startsWith(start))
    .sort(([a], [b]) => b.length - a.length)
    .map(([, each]) => each);
  const whole = Number.isInteger(amount);
  const figures = amount.toLocaleString("en-US", {
    minimumFractionDigits: whole ? 0 : 2,
    maximumFractionDigits: 2,
  });
  return `${sign ?? ""}${figures}`;
};
