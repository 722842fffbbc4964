package rodwork.design.arm;

import rodwork.rules.Standing;

/** Sections with which arms of one making begin and end. */
public record ArmSections(Section origin, Section tip, String source, Standing standing) {}
