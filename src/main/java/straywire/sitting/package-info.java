/**
 * A sitting at the bench: the log on disk, undo and resume, the step proposed and its short answer,
 * repair and confirmation, expected levels, the machine dialogue. Must not know terminals or
 * command lines.
 */
package straywire.sitting;
