import currency from "./currency.json" with { type: "json" };

const WHOLE = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });
const IN_CENTS = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** A sum in the owner's own currency: "$24", "£7.50". */
export const sayMoney = (amount: number, zone: string): string => {
  const [sign] = Object.entries(currency.signs)
    .filter(([start]) => zone.startsWith(start))
    .sort(([a], [b]) => b.length - a.length)
    .map(([, each]) => each);
  const figures = Number.isInteger(amount) ? WHOLE : IN_CENTS;
  return `${sign ?? ""}${figures.format(amount)}`;
};
