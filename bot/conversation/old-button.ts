export const OLD_BUTTON = "That button is from an older message and does nothing now.";
