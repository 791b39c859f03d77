#include "cli/sweep_view.h"
void sweep_svg(struct sweep_view *view)
{
    (void)view;
}
