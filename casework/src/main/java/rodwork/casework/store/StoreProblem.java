package rodwork.casework.store;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why the store cannot do what was asked: every refusal of this package. */
public enum StoreProblem {
  CODE_WRONG(
      "case-code-wrong",
      "\"%s\" cannot be the code of a case.",
      "Take 1 to 40 letters, digits, spaces and . _ -, beginning with a letter or a digit; no"
          + " patient's name is needed."),
  LABEL_WRONG(
      "part-label-wrong",
      "The name of a part (%s) has %s characters, or control characters in it; the limit is %s.",
      "Give it a shorter, plain name."),
  CASE_EXISTS(
      "case-exists",
      "There is a case \"%s\" already.",
      "Choose another code (import takes one with --as)."),
  NO_CASE("case-not-found", "There is no case \"%s\" in %s.", "rodwork case list tells what is."),
  CASE_CHANGED(
      "case-changed",
      "The case \"%s\" stands at revision %s by now; this change was made on revision %s.",
      "Look at the case again, then make the change anew; nothing was overwritten."),
  NOTHING_TO_UNDO(
      "nothing-to-undo", "The case \"%s\" has nothing to undo.", "It is as it was first saved."),
  NOTHING_TO_REDO(
      "nothing-to-redo", "The case \"%s\" has nothing to redo.", "Its newest state holds."),
  UNWRITABLE(
      "store-unwritable",
      "The case store %s cannot be written: %s. Nothing that was saved before is touched.",
      "Check that the folder may be written to, or choose another with --store."),
  FULL(
      "store-full",
      "There is no room left at the case store %s (%s). This change was not saved; all before it"
          + " was.",
      "Make room on that disk, or move the store and name it with --store; then try again."),
  BUSY(
      "store-busy",
      "Another program has held the case store %s for over %s s.",
      "Let it finish, or close it; then try again. This change was not saved."),
  DAMAGED(
      "store-damaged",
      "The case store %s is damaged: %s.",
      "Leave it as it is, restore the last backup into another folder (rodwork case restore FILE"
          + " --store DIR), and keep the damaged one."),
  CONTENT_DAMAGED(
      "content-damaged",
      "Content %s of the case store %s is %s.",
      "The other parts of the case are whole. Restore the last backup into another folder, or put"
          + " the file in again."),
  NEWER(
      "store-newer",
      "The case store %s has version %s; this Rodwork knows versions up to %s.",
      "Use the newer Rodwork; the store was left as it is."),
  NO_STORE(
      "store-not-found",
      "There is no case store in %s.",
      "rodwork case new makes one; --store names another folder."),
  NOT_EMPTY(
      "restore-not-empty",
      "The folder %s is not empty, and a restore overwrites nothing.",
      "Name a new folder with --store, look at it, then move it where you want it."),
  FILE_UNWRITABLE(
      "archive-unwritable",
      "%s cannot be written: %s.",
      "Check that the folder exists, may be written to and has room; an older file of that name is"
          + " as it was."),
  ARCHIVE_WRONG(
      "archive-wrong",
      "%s cannot be taken in: %s.",
      "Ask for the file again, or make it anew; nothing was changed here."),
  ARCHIVE_NEWER(
      "archive-newer",
      "%s has format version %s; this Rodwork knows versions up to %s.",
      "Use the newer Rodwork; nothing was changed here.");

  private final String code;
  private final String text;
  private final String advice;

  StoreProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  /** The refusal with its values, in the order of the text. */
  public Refusal with(Object... values) {
    return new Refusal(code, String.format(Locale.ROOT, text, values), advice);
  }
}
