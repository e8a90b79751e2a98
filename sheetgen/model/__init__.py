"""What passes between the stages: stock and project as written, worked numbers, drawings, pages."""
