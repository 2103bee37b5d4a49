/** The version of the campaign text that this program writes and reads without migration. */
export const FORMAT_VERSION = 1;
