/** A time that runs, to the second [from ms]: `4:07`, `1:04:07`; `−0:12` before. */
export declare const runningTime: (milliseconds: number) => string
/** Time of day on this device, to the second. */
export declare const dayTime: (milliseconds: number) => string
